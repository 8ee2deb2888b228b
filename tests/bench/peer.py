"""The two pieces of work in SimPy: the queue and the containers as its guide would have them, and the cups again
with plain counts, which is the quickest that SimPy was found to be. A run for each line that comes in, told as a line of JSON.

Use: python3 peer.py mm1|cups|containers REPLICATIONS
"""
import json
import random
import sys
import time

import simpy


def queue_wait(seed, customers=300_000):
    env, draw = simpy.Environment(), random.Random(seed).expovariate
    server = simpy.Resource(env, 1)
    waited = [0.0]

    def customer():
        came = env.now
        with server.request() as turn:
            yield turn
            waited[0] += env.now - came
            yield env.timeout(draw(1.0))

    def door():
        for _ in range(customers):
            yield env.timeout(draw(0.8))
            env.process(customer())

    env.process(door())
    env.run()
    return waited[0] / customers, 0.0


def cup_day_in_containers(seed):
    env, draw = simpy.Environment(), random.Random(seed).expovariate
    clean, waiting = simpy.Container(env, 60, init=60), simpy.Container(env, 60, init=0)
    state = dict(dirty=0, hand=0, most=0, lost=0)

    def guest():
        yield clean.get(1)
        state["hand"] += 1
        state["most"] = max(state["most"], state["hand"])
        yield env.timeout(draw(1 / 20))
        state["hand"] -= 1
        state["dirty"] += 1

    def machine():
        while True:
            yield waiting.get(1)
            more = min(24, waiting.level)
            if more > 0:
                yield waiting.get(more)
            yield env.timeout(3)
            yield clean.put(more + 1)

    def rounds():
        while True:
            yield env.timeout(5)
            dirty, state["dirty"] = state["dirty"], 0
            if dirty > 0:
                yield waiting.put(dirty)

    def door():
        while True:
            yield env.timeout(draw(2.0))
            if clean.level > 0:
                env.process(guest())
            else:
                state["lost"] += 1

    for process in (door, rounds, machine):
        env.process(process())
    env.run(until=240)
    return state["lost"], state["most"]


def cup_day(seed):
    env, draw = simpy.Environment(), random.Random(seed).expovariate
    state = dict(clean=60, dirty=0, waiting=0, washing=0, hand=0, most=0, lost=0)

    def guest():
        state["clean"] -= 1
        state["hand"] += 1
        state["most"] = max(state["most"], state["hand"])
        yield env.timeout(draw(1 / 20))
        state["hand"] -= 1
        state["dirty"] += 1

    def wash():
        while state["waiting"] > 0:
            state["washing"] = min(25, state["waiting"])
            state["waiting"] -= state["washing"]
            yield env.timeout(3)
            state["clean"] += state["washing"]
            state["washing"] = 0

    def rounds():
        while True:
            yield env.timeout(5)
            state["waiting"] += state["dirty"]
            state["dirty"] = 0
            if state["washing"] == 0 and state["waiting"] > 0:
                env.process(wash())

    def door():
        while True:
            yield env.timeout(draw(2.0))
            if state["clean"] > 0:
                env.process(guest())
            else:
                state["lost"] += 1

    env.process(door())
    env.process(rounds())
    env.run(until=240)
    return state["lost"], state["most"]


days = {"cups": cup_day, "containers": cup_day_in_containers}.get(sys.argv[1])
replications = int(sys.argv[2]) if days else 1
for run, _ in enumerate(sys.stdin):
    start = time.perf_counter()
    results = [days(run * 1_000_003 + i) if days else queue_wait(run + 1) for i in range(replications)]
    seconds = time.perf_counter() - start
    sums = [[sum(r[j] for r in results), sum(r[j] ** 2 for r in results)] for j in (0, 1)]
    print(json.dumps(dict(seconds=seconds, n=replications, sums=sums)), flush=True)
