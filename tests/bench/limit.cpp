// The two pieces of work by hand in C++: the speed to be measured against. A run for each line that comes in.
// Build: g++ -O3 -march=native limit.cpp; use: limit mm1|cups REPLICATIONS
#include <chrono>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>

// xoshiro256++ (Blackman & Vigna), set from a number by splitmix64.
struct Random {
  uint64_t s[4];
  explicit Random(uint64_t seed) {
    for (auto& word : s) {
      uint64_t z = seed += 0x9e3779b97f4a7c15ull;
      z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ull;
      z = (z ^ (z >> 27)) * 0x94d049bb133111ebull;
      word = z ^ (z >> 31);
    }
  }
  static uint64_t turn(uint64_t x, int by) { return (x << by) | (x >> (64 - by)); }
  uint64_t bits() {
    const uint64_t out = turn(s[0] + s[3], 23) + s[0], t = s[1] << 17;
    s[2] ^= s[0]; s[3] ^= s[1]; s[1] ^= s[2]; s[0] ^= s[3]; s[2] ^= t; s[3] = turn(s[3], 45);
    return out;
  }
  double uniform() { return ((bits() >> 11) + 0.5) * 0x1p-53; }
};

// Exponential by the ziggurat of Marsaglia & Tsang (J. Stat. Software 5(8), 2000), 256 layers.
struct Ziggurat {
  uint32_t k[256];
  double w[256], f[256];
  Ziggurat() {
    const double v = 3.949659822581572e-3;
    double d = 7.69711747013104972, before = d;
    const double q = v / std::exp(-d);
    k[0] = uint32_t(d / q * 4294967296.0); k[1] = 0;
    w[0] = q / 4294967296.0; w[255] = d / 4294967296.0;
    f[0] = 1; f[255] = std::exp(-d);
    for (int i = 254; i >= 1; i--) {
      d = -std::log(v / d + std::exp(-d));
      k[i + 1] = uint32_t(d / before * 4294967296.0);
      before = d;
      f[i] = std::exp(-d);
      w[i] = d / 4294967296.0;
    }
  }
  double draw(Random& random) const {
    for (;;) {
      const uint64_t x = random.bits();
      const uint32_t j = uint32_t(x >> 32), i = x & 255;
      if (j < k[i]) return j * w[i];
      if (i == 0) return 7.69711747013104972 - std::log(random.uniform());
      const double at = j * w[i];
      if (f[i] + random.uniform() * (f[i - 1] - f[i]) < std::exp(-at)) return at;
    }
  }
};
static const Ziggurat ziggurat;

struct Event {
  double at;
  uint32_t turn;
  int what;
};
struct Heap {
  Event list[512];
  int size = 0;
  uint32_t turns = 0;
  static bool first(const Event& a, const Event& b) { return a.at < b.at || (a.at == b.at && a.turn < b.turn); }
  void clear() { size = 0; turns = 0; }
  void push(double at, int what) {
    const Event event{at, turns++, what};
    int i = size++;
    while (i > 0 && first(event, list[(i - 1) / 2])) { list[i] = list[(i - 1) / 2]; i = (i - 1) / 2; }
    list[i] = event;
  }
  Event pop() {
    const Event top = list[0], last = list[--size];
    int i = 0;
    for (int c = 1; c < size; c = 2 * i + 1) {
      if (c + 1 < size && first(list[c + 1], list[c])) c++;
      if (!first(list[c], last)) break;
      list[i] = list[c]; i = c;
    }
    list[i] = last;
    return top;
  }
};

static double queueWait(uint64_t seed) {
  const int customers = 300000;
  Random random(seed);
  static Heap heap;
  static double line[1 << 16];
  heap.clear();
  uint32_t head = 0, tail = 0;
  bool busy = false;
  int arrived = 0;
  double waited = 0;
  heap.push(ziggurat.draw(random) / 0.8, 0);
  while (heap.size > 0) {
    const Event event = heap.pop();
    if (event.what == 0) {
      if (++arrived < customers) heap.push(event.at + ziggurat.draw(random) / 0.8, 0);
      if (busy) line[tail++ & 65535] = event.at;
      else { busy = true; heap.push(event.at + ziggurat.draw(random), 1); }
    } else if (head != tail) {
      waited += event.at - line[head++ & 65535];
      heap.push(event.at + ziggurat.draw(random), 1);
    } else busy = false;
  }
  return waited / customers;
}

static void cupDay(uint64_t seed, Heap& heap, double& lost, double& inHand) {
  Random random(seed);
  heap.clear();
  int clean = 60, dirty = 0, waiting = 0, washing = 0, hand = 0, most = 0, gone = 0;
  heap.push(ziggurat.draw(random) * 0.5, 0);
  heap.push(5, 2);
  for (;;) {
    const Event event = heap.pop();
    if (event.at > 240) break;
    if (event.what == 0) {
      heap.push(event.at + ziggurat.draw(random) * 0.5, 0);
      if (clean > 0) { clean--; if (++hand > most) most = hand; heap.push(event.at + ziggurat.draw(random) * 20, 1); }
      else gone++;
    } else if (event.what == 1) { hand--; dirty++; }
    else {
      if (event.what == 2) { waiting += dirty; dirty = 0; heap.push(event.at + 5, 2); }
      else { clean += washing; washing = 0; }
      if (washing == 0 && waiting > 0) { washing = waiting < 25 ? waiting : 25; waiting -= washing; heap.push(event.at + 3, 3); }
    }
  }
  lost = gone;
  inHand = most;
}

int main(int count, char** words) {
  const bool cups = count > 1 && !std::strcmp(words[1], "cups");
  const int n = cups && count > 2 ? std::atoi(words[2]) : 1;
  static Heap heap;
  int run = 0;
  for (int sign = std::getchar(); sign != EOF; sign = std::getchar()) {
    if (sign != '\n') continue;
    const auto start = std::chrono::steady_clock::now();
    double s1 = 0, q1 = 0, s2 = 0, q2 = 0;
    for (int i = 0; i < n; i++) {
      double a = 0, b = 0;
      if (cups) cupDay(run * 1000003ull + i, heap, a, b);
      else a = queueWait(run + 1);
      s1 += a; q1 += a * a; s2 += b; q2 += b * b;
    }
    const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    std::printf("{\"seconds\":%.6f,\"n\":%d,\"sums\":[[%.9g,%.9g],[%.9g,%.9g]]}\n", seconds, n, s1, q1, s2, q2);
    std::fflush(stdout);
    run++;
  }
}
