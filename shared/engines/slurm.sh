#!/bin/sh
# A study of sites with Slurm: an array of parts, and a merge when all of them have ended, however they ended.
#
#   TABLE=sites.csv BASE=house.yaml DIR=results PARTS=1000 sh slurm.sh
#   LIST=3,7-9 ... sh slurm.sh         runs these parts alone: what the merge named in results/logs/merge-*.out
#
# All of it must be in a folder that every node sees. OPTIONS: options of the study; MERGE: of the merge alone.
set -eu
: "${TABLE:?name the table of sites}" "${BASE:?name the scenario they start from}" "${DIR:?name the folder of the parts}"
export CUPTIDE="${CUPTIDE:-cuptide}" PARTS="${PARTS:-1000}" OPTIONS="${OPTIONS:-}" MERGE="${MERGE:-}" TABLE BASE DIR
here=$(dirname "$0")
# Without the folder of its log a task fails before it starts, and leaves none.
mkdir -p "$DIR/logs"
array=$(sbatch --parsable --array="${LIST:-1-$PARTS}" --output="$DIR/logs/%A_%a.out" "$here/slurm-part.sh")
# afterany: after a failed task a merge that waits with afterok would wait for ever; this one names what is missing.
merge=$(sbatch --parsable --dependency="afterany:${array%%;*}" --output="$DIR/logs/merge-%j.out" "$here/slurm-merge.sh")
echo "${array%%;*} ${merge%%;*}"
