#!/usr/bin/env python3
"""Times `plan` over random questions as people ask them: tests/race/plans.py PROGRAM [--cases 40] [--seed 18] [--keep FILE] [--against FILE]

Processor time and time by the clock of each. --keep writes the answers down; --against says how far the figures lie from those of another program.
"""
import argparse, json, random, resource, subprocess, sys, time

DECIBELS = {"--placement-spread": (.7, [.1, .3, .5, .8, 1, 1.5, 2, 3]), "--half-width": (.7, [.3, .5, .8, 1, 1.5, 2, 3]),
            "--range": (.8, [5, 20, 30, 40, 50, 60, 70, 80, 100]), "--claim": (.8, [1, 6, 10, 20, 30, 40, 50, 60]),
            "--margin": (.3, [.5, 1, 2, 3, 6, 10]), "--probability": (.3, [.5, .8, .9, .95, .99]), "--looks": (.3, [1, 5, 20, 100, 1000]),
            "--sweeps": (.2, [1, 2, 3, 5, 10, 20]), "--placements": (.2, [2, 3, 5, 10, 20, 50]), "--reference-sweeps": (.2, [2, 3, 5, 10, 50])}


def question(dice):
    words = ["--scatter", str(dice.choice([.1, .2, .3, .5, .8, 1, 1.5, 2]))]
    for name, (often, values) in DECIBELS.items():
        if dice.random() < often:
            words += [name, str(dice.choice(values))]
    return words


def answered(program, words):
    before, start = resource.getrusage(resource.RUSAGE_CHILDREN), time.monotonic()
    done = subprocess.run([program, "plan", *words, "--format", "json"], capture_output=True, text=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    if done.returncode not in (0, 2):
        sys.exit(f"plan {' '.join(words)} ended with {done.returncode}: {done.stderr}")
    return {"words": " ".join(words), "clock": time.monotonic() - start, "answer": json.loads(done.stdout or "null"),
            "processor": after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime}


def apart(one, other):
    """The largest difference of two answers; infinite where they hold different things."""
    if isinstance(one, dict) and isinstance(other, dict) and one.keys() == other.keys():
        return max((apart(one[key], other[key]) for key in one), default=0)
    if isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        return max(map(apart, one, other), default=0)
    if isinstance(one, float) and isinstance(other, float):
        return abs(one - other)
    return 0 if one == other else float("inf")


def main():
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("program")
    words.add_argument("--cases", type=int, default=40)
    words.add_argument("--seed", type=int, default=18)
    words.add_argument("--keep")
    words.add_argument("--against")
    asked = words.parse_args()
    dice = random.Random(asked.seed)
    answers = [answered(asked.program, question(dice)) for _ in range(asked.cases)]
    for kind in ("processor", "clock"):
        times = sorted(answer[kind] for answer in answers)
        print(f"{kind}: median {times[len(times) // 2]:.2f} s, longest {times[-1]:.2f} s, sum {sum(times):.1f} s, {sum(t > 1 for t in times)} over 1 s, {sum(t > 2 for t in times)} over 2 s")
    print("longest:", max(answers, key=lambda answer: answer["processor"])["words"])
    if asked.keep:
        with open(asked.keep, "w") as file:
            json.dump(answers, file)
    if asked.against:
        with open(asked.against) as file:
            print("figures differ by at most", max(apart(one["answer"], other["answer"]) for one, other in zip(answers, json.load(file), strict=True)))


if __name__ == "__main__":
    main()
