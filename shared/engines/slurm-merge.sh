#!/bin/sh
#SBATCH --cpus-per-task=1 --mem=1G --time=60
# Submitted by slurm.sh. Network folders may show new files a minute late.
# shellcheck disable=SC2086
exec $CUPTIDE sites "$TABLE" --base "$BASE" --merge --parts "$PARTS" --out "$DIR" --wait "${WAIT:-60}" $OPTIONS $MERGE
