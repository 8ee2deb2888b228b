#!/bin/sh
# A study of sites with GNU parallel, on this machine or on several that share a folder.
#
#   TABLE=sites.csv BASE=house.yaml DIR=results PARTS=1000 sh parallel.sh [options of the study, such as --days 2000]
#
# Run it again after any failure: it asks the merge what is missing and runs that, nothing else.
# CUPTIDE: the command (cuptide). JOBS: tasks at a time (one a core). MERGE: options of the merge alone, such as --json.
# SSH: more options of parallel, such as -S 32/a,32/b --workdir . for other machines.
set -eu
: "${TABLE:?name the table of sites}" "${BASE:?name the scenario they start from}" "${DIR:?name the folder of the parts}"
: "${CUPTIDE:=cuptide}" "${PARTS:=1000}" "${JOBS:=100%}" "${MERGE:=}" "${SSH:=}"
mkdir -p "$DIR"

merge() {
  status=0
  # shellcheck disable=SC2086 # several words each
  $CUPTIDE sites "$TABLE" --base "$BASE" --merge --parts "$PARTS" --out "$DIR" "$@" $MERGE >"$DIR/.answer.$$" || status=$?
}

merge "$@" 2>"$DIR/.missing.$$"
if [ "$status" = 3 ]; then
  # "3,7-9" as numbers. No job log: the files say what is done, and a log would also count what failed.
  tr ',' '\n' <"$DIR/.answer.$$" | while IFS=- read -r from to; do seq "$from" "${to:-$from}"; done |
    # shellcheck disable=SC2086
    parallel --will-cite -q -j "$JOBS" --retries 3 --halt soon,fail=20% $SSH \
      $CUPTIDE sites "$TABLE" --base "$BASE" --part "{}/$PARTS" --out "$DIR" "$@" >&2 || true
  merge "$@"
else
  cat "$DIR/.missing.$$" >&2
fi
cat "$DIR/.answer.$$"
rm -f "$DIR/.answer.$$" "$DIR/.missing.$$"
exit "$status"
