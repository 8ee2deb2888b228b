#!/bin/sh
#SBATCH --cpus-per-task=1 --mem=300M --time=60 --requeue --open-mode=append
# One part; submitted by slurm.sh. The number of parts is given: SLURM_ARRAY_TASK_COUNT counts only what is rerun.
# shellcheck disable=SC2086
exec $CUPTIDE sites "$TABLE" --base "$BASE" --part "$SLURM_ARRAY_TASK_ID/$PARTS" --out "$DIR" $OPTIONS
