#!/usr/bin/env python3
"""Attacks the program from outside: kills it at random, fills its disk, lets runs race, and holds every promise against what is then on the disk.

    tests/faults/faults.py PROGRAM [--seconds 60] [--seed 1] [--only kills,signals,races,disk,place,steps,instants,fonts]

PROGRAM is the built sweepstats. What needs a mount of its own (disk, place, fonts), or strace (steps, instants), is left out, and that is said, where there is none.
Ends with 1 where a promise was broken.
"""
import argparse, hashlib, json, os, random, re, shutil, signal, stat, subprocess, sys, tempfile, time

# What lets an administrator write where a folder forbids it.
PLAIN = ["setpriv", "--bounding-set=-dac_override,-dac_read_search,-fowner,-chown"] if os.geteuid() == 0 else []
HIDDEN = re.compile(r"^\..*\.[0-9a-f]{32}\.(part|old|lock)$")


class Faults:
    def __init__(self, program, seed):
        self.program, self.dice, self.broken, self.tally = program, random.Random(seed), [], {}
        self.root = tempfile.mkdtemp(prefix="sweepstats-faults-")
        self.campaign = os.path.join(self.root, "campaign")
        self.call("rehearse", self.campaign, "--points", "21", "--seed", "3", "--lots", "1", "--specimens", "2", "--sweeps", "3")

    def call(self, *words, timeout=600, under=()):
        start = time.monotonic()
        done = subprocess.run([*under, self.program, *words], capture_output=True, timeout=timeout)
        return done.returncode, done.stdout.decode(errors="replace"), done.stderr.decode(errors="replace"), time.monotonic() - start

    def start(self, *words):
        return subprocess.Popen([self.program, *words], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)

    def count(self, what, number=1):
        self.tally[what] = self.tally.get(what, 0) + number

    def expect(self, good, what):
        if not good:
            self.broken.append(what)
            print("BROKEN:", what, flush=True)

    # --- promises -------------------------------------------------------------------------------------------------------

    def whole(self, report):
        """Why a report is not whole; None where every listed file is there with its bytes and nothing else is."""
        try:
            with open(os.path.join(report, "summary.json"), "rb") as file:
                listed = {f["path"]: f["sha256"] for f in json.load(file)["report_files"]}
        except (OSError, ValueError, KeyError) as e:
            return f"summary.json: {e}"
        found = {os.path.relpath(os.path.join(d, f), report) for d, _, files in os.walk(report) for f in files} - {"summary.json"}
        if found != set(listed):
            return f"files differ: {sorted(found ^ set(listed))[:3]}"
        for path, sha in listed.items():
            with open(os.path.join(report, path), "rb") as file:
                if hashlib.sha256(file.read()).hexdigest() != sha:
                    return f"{path} is not as listed"
        return None

    def hidden(self, folder):
        return [f for f in os.listdir(folder) if HIDDEN.match(f)]

    # --- attacks --------------------------------------------------------------------------------------------------------

    def kills(self, seconds):
        """SIGKILL at a random instant of a run over an earlier report: old or new stands whole, the next run leaves nothing behind."""
        place = os.path.join(self.root, "kills")
        target = os.path.join(place, "report")
        self.call("run", self.campaign, "--out", target)
        usual = self.call("run", self.campaign, "--out", target)[3]
        writing = self.writing(place, target)
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            run = self.start("run", self.campaign, "--out", target, "--seed", str(self.dice.randrange(1000)), "--charts", self.dice.choice(["all", "none"]))
            # Three quarters of the kills fall where the report is written and exchanged.
            if self.dice.random() < .25:
                time.sleep(self.dice.uniform(0, usual))
            else:
                while run.poll() is None and not self.hidden(place):
                    time.sleep(.0005)
                time.sleep(self.dice.uniform(0, writing))
            run.kill()
            self.count("kills" if run.wait() == -9 else "kills that came too late")
            self.expect(not (why := self.whole(target)), f"after a kill: {why}")
            for name in {name[-5:] for name in self.hidden(place)}:
                self.count(f"kills that left a hidden {name}")
            if self.dice.random() < .3:
                self.expect(self.call("run", self.campaign, "--out", target)[0] == 0, "the run after a kill failed")
                self.expect(not self.hidden(place), f"left after the next run: {self.hidden(place)}")
        self.call("run", self.campaign, "--out", target)
        self.expect(os.listdir(place) == ["report"], f"left at the end: {os.listdir(place)}")

    def writing(self, place, target):
        """How long the hidden folder of a run is there."""
        run, first, last = self.start("run", self.campaign, "--out", target), None, 0
        while run.poll() is None:
            if self.hidden(place):
                last = time.monotonic()
                first = first or last
            time.sleep(.0005)
        return last - first

    def signals(self, seconds):
        """A signal at a random instant ends the run at once and leaves nothing beside the report, and of what is new all or nothing."""
        place, fresh = os.path.join(self.root, "signals"), os.path.join(self.root, "fresh")
        target = os.path.join(place, "report")
        sweeps = [os.path.join(self.campaign, "floor", name) for name in sorted(os.listdir(os.path.join(self.campaign, "floor")))]
        commands = [["run", self.campaign, "--out", target], ["rehearse", fresh + "/c", "--points", "2001"], ["init", fresh + "/i"], ["look", *sweeps, "--values", fresh + "/v.csv"]]
        usual, wanted = {}, {}
        for words in commands:
            usual[words[0]] = max(self.timed(words, fresh) for _ in range(2))
            wanted[words[0]] = self.files(fresh)
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            shutil.rmtree(fresh, ignore_errors=True)
            words = self.dice.choice(commands)
            kind = self.dice.choice([signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
            run = self.start(*words)
            time.sleep(self.dice.uniform(.3, 1.05) * usual[words[0]])
            run.send_signal(kind)
            try:
                run.wait(60)
            except subprocess.TimeoutExpired:
                run.kill()
                run.wait()
                self.expect(False, f"{kind.name} did not end {words[0]} within 60 s")
            self.count(f"{kind.name} to {words[0]}" if run.returncode != 0 else "signals that came too late")
            self.expect(run.returncode in (0, -kind, 128 + kind), f"{kind.name} ended {words[0]} with {run.returncode}")
            self.expect(not (why := self.whole(target)), f"after {kind.name}: {why}")
            self.expect(not self.hidden(place), f"left after {kind.name}: {self.hidden(place)}")
            self.expect(self.files(fresh) in ([], wanted[words[0]]) and (run.returncode != 0 or self.files(fresh) == wanted[words[0]]),
                        f"{kind.name} to {words[0]} left {self.files(fresh)[:5]}")

    def timed(self, words, fresh):
        shutil.rmtree(fresh, ignore_errors=True)
        return self.call(*words)[3]

    @staticmethod
    def files(folder):
        return sorted(os.path.relpath(os.path.join(d, f), folder) for d, _, files in os.walk(folder) for f in files)

    def races(self, seconds):
        """Three runs at once at one target: each ends well or says why, and one whole report stands."""
        place = os.path.join(self.root, "races")
        target = os.path.join(place, "report")
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            runs = [self.start("run", self.campaign, "--out", target, "--charts", "none", "--seed", str(i)) for i in range(3)]
            codes = [run.wait(60) for run in runs]
            self.count("races of three runs")
            self.expect(set(codes) <= {0, 2} and 0 in codes, f"race ended with {codes}")
            self.expect(not (why := self.whole(target)), f"after a race: {why}")
            self.expect(os.listdir(place) == ["report"], f"left after a race: {os.listdir(place)}")
            if self.dice.random() < .3:
                shutil.rmtree(target)

    def disk(self, seconds):
        """A disk that is full at a random byte: an error that names the target, nothing half, the earlier report whole."""
        mount = self.mounted("disk", "2m")
        if mount is None:
            return
        target, filler = os.path.join(mount, "report"), os.path.join(mount, "filler")
        end = time.monotonic() + seconds
        try:
            earlier = self.call("run", self.campaign, "--out", target, "--charts", "none")[0] == 0
            self.expect(earlier, "the report does not fit into 2 MB")
            while time.monotonic() < end:
                free = os.statvfs(mount).f_bavail * os.statvfs(mount).f_frsize
                with open(filler, "wb") as file:
                    file.write(b"x" * max(0, free - self.dice.randrange(0, 500_000)))
                before = sorted(os.listdir(mount))
                words = self.dice.choice([["run", self.campaign, "--out", target], ["run", self.campaign, "--out", os.path.join(mount, "new/r"), "--charts", "none"],
                                          ["rehearse", os.path.join(mount, "new/c"), "--points", "401"], ["init", os.path.join(mount, "new/i")],
                                          ["look", self.campaign + "/floor/floor-01.csv", self.campaign + "/floor/floor-02.csv", "--values", os.path.join(mount, "new.csv")]])
                code, _, error, _ = self.call(*words)
                self.count("full disks" if code else "disks with room")
                self.expect(code in (0, 2), f"full disk, {words[0]}: {code} {error}")
                self.expect(code == 0 or len(error.splitlines()) == 1 and not re.search(r"[0-9a-f]{32}", error), f"full disk, {words[0]}: {error!r}")
                self.expect(code == 0 or sorted(os.listdir(mount)) == before, f"full disk, {words[0]} left {sorted(os.listdir(mount))}")
                self.expect(not (why := self.whole(target)), f"full disk, {words[0]}: {why}")
                os.remove(filler)
                shutil.rmtree(os.path.join(mount, "new"), ignore_errors=True)
                if os.path.exists(os.path.join(mount, "new.csv")):
                    os.remove(os.path.join(mount, "new.csv"))
        finally:
            subprocess.run(["umount", mount])

    def place(self, seconds):
        """A target that is a mount point, and folders of other owners and modes: the report is written and the folder keeps what it had."""
        mount = self.mounted("place", "8m")
        if mount is not None:
            try:
                for _ in range(2):
                    code, _, error, _ = self.call("run", self.campaign, "--out", mount)
                    self.expect(code == 0, f"mount point: {error}")
                    self.expect(not (why := self.whole(mount)), f"mount point: {why}")
                    self.count("runs onto a mount point")
                end = time.monotonic() + seconds
                usual = self.call("run", self.campaign, "--out", mount)[3]
                while time.monotonic() < end:
                    run = self.start("run", self.campaign, "--out", mount, "--charts", self.dice.choice(["all", "none"]))
                    time.sleep(self.dice.uniform(.7, 1.02) * usual)
                    run.kill()
                    run.wait()
                    self.count("kills on a mount point")
                    code, _, error, _ = self.call("run", self.campaign, "--out", mount)
                    self.expect(code == 0, f"mount point after a kill: {error}")
                    self.expect(not (why := self.whole(mount)), f"mount point after a kill: {why}")
                    self.expect(not self.hidden(mount), f"mount point: left {self.hidden(mount)}")
            finally:
                subprocess.run(["umount", mount])
        place = os.path.join(self.root, "rights")
        os.makedirs(place)
        for mode, owner in [(0o2770, None), (0o700, None), (0o755, None), (0o555, None)] + ([(0o750, (1234, 4321)), (0o2775, (0, 4321))] if os.geteuid() == 0 else []):
            target = os.path.join(place, f"r{mode:o}-{owner}")
            os.mkdir(target)
            if owner:
                os.chown(target, *owner)
            os.chmod(target, mode)
            before = os.stat(target)
            for _ in range(2):
                code, _, error, _ = self.call("run", self.campaign, "--out", target, "--charts", "none", under=() if owner else PLAIN)
                self.expect(code == 0, f"folder of mode {mode:o}: {error}")
                after = os.stat(target)
                self.expect((after.st_uid, after.st_gid, stat.S_IMODE(after.st_mode)) == (before.st_uid, before.st_gid, mode), f"mode {mode:o} {owner} became {after}")
                self.count("folders with rights of their own")

    def steps(self, seconds):
        """Where the system has no exchange in one step, a run is killed between the two: the next one finds the earlier report and leaves nothing."""
        if shutil.which("strace") is None:
            print("steps: left out, there is no strace")
            return
        place = os.path.join(self.root, "steps")
        target = os.path.join(place, "report")
        words = ["run", self.campaign, "--out", target, "--charts", "none"]
        two = ["strace", "-f", "-qq", "-o", "/dev/null", "-e", "trace=renameat2,rename", "-e", "inject=renameat2:error=EINVAL"]
        self.call(*words)
        self.flushes(os.path.join(self.root, "flushes", "report"))
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            self.call(*words, under=[*two, "-e", "inject=rename:signal=SIGKILL:when=2"])
            aside = [name for name in self.hidden(place) if name.endswith(".old")]
            self.count("kills between two steps" if aside and not os.path.exists(target) else "kills that missed them")
            self.expect(not aside or not (why := self.whole(os.path.join(place, aside[0]))), f"moved aside: {aside}")
            code, _, error, _ = self.call(*words, under=self.dice.choice([two, []]))
            self.expect(code == 0, f"after a kill between two steps: {error}")
            self.expect(not (why := self.whole(target)), f"after a kill between two steps: {why}")
            self.expect(os.listdir(place) == ["report"], f"left after a kill between two steps: {os.listdir(place)}")

    def flushes(self, target):
        """Every file of a report, and its folders, are on the disk before the exchange."""
        log = os.path.join(self.root, "calls")
        self.call("run", self.campaign, "--out", target)
        self.call("run", self.campaign, "--out", target, "--seed", "9", under=["strace", "-f", "-qq", "-y", "-o", log, "-e", "trace=fsync,fdatasync,renameat2,open,openat"])
        with open(log, errors="replace") as file:
            calls = file.read().split("renameat2(")[0]
        flushed = set(re.findall(r"f(?:data)?sync\(\d+<[^>]*\.part/?([^>]*)>", calls))
        self.expect(not (missing := (set(self.files(target)) | {"", "charts"}) - flushed), f"not on the disk before the exchange: {sorted(missing)[:3]}")
        self.count("files flushed before the exchange", len(flushed))

    def instants(self, seconds):
        """A kill or a signal at one call of the system: between the two files of init, and at the making of each folder of a run that prints."""
        if shutil.which("strace") is None:
            print("instants: left out, there is no strace")
            return
        self.between_two_files(os.path.join(self.root, "instants", "campaign"))
        end, number, made = time.monotonic() + seconds, 0, 20
        while number < made or time.monotonic() < end:
            number += 1
            made = self.at_a_folder(os.path.join(self.root, "instants", "reports"), number if number <= made else self.dice.randint(1, made)) or made

    def between_two_files(self, folder):
        self.call("init", folder, under=["strace", "-f", "-qq", "-o", "/dev/null", "-e", "trace=rename", "-e", "inject=rename:signal=SIGKILL:when=2"])
        alone = os.path.join(folder, "sweeps.csv")
        self.count("kills between two files" if os.path.exists(alone) and not os.path.exists(os.path.join(folder, "campaign.toml")) else "kills that missed them")
        code, _, error, _ = self.call("init", folder)
        self.expect(code == 2 and "killed" in error, f"after a kill between two files: {code} {error}")
        os.remove(alone)
        code, _, error, _ = self.call("init", folder)
        self.expect(code == 0 and not self.hidden(folder), f"after what it left alone was removed: {code} {error} {self.hidden(folder)}")

    def at_a_folder(self, place, number):
        """A signal when the run makes its folder of a number, on one thread; the number of all where it makes fewer."""
        scratch, browser = os.path.join(place, "scratch"), os.path.join(place, "bin")
        for folder in (scratch, browser):
            os.makedirs(folder, exist_ok=True)
        with open(os.path.join(browser, "chromium"), "w") as script:
            script.write('#!/bin/sh\nfor word; do case $word in --print-to-pdf=*) echo > "${word#*=}";; esac; done\n')
        os.chmod(os.path.join(browser, "chromium"), 0o755)
        log, target = os.path.join(self.root, "calls"), os.path.join(place, "report")
        under = ["env", f"TMPDIR={scratch}", f"PATH={browser}:{os.environ['PATH']}", "strace", "-f", "-qq", "-o", log, "-e", "trace=mkdir", "-e", f"inject=mkdir:signal=SIGTERM:when={number}"]
        shutil.rmtree(target, ignore_errors=True)
        code = self.call("run", self.campaign, "--out", target, "--charts", "none", "--pdf", "--threads", "1", under=under)[0]
        left = [name for name in os.listdir(scratch) if name.startswith("sweepstats-print-")]
        self.expect(not left and not self.hidden(place), f"SIGTERM at the making of folder {number} left {left} {self.hidden(place)}")
        if code != 0:
            self.count("signals at the making of a folder")
            self.expect(not os.path.exists(target), f"SIGTERM at the making of folder {number} left a report")
            return None
        with open(log, errors="replace") as file:
            return file.read().count("mkdir(")

    def fonts(self, seconds):
        """A machine without fonts: a report has its charts as SVG, and who asks for PNG is told what to install."""
        bare = ["unshare", "--mount", "sh", "-c", 'mount -t tmpfs tmpfs /usr/share/fonts && exec "$@"', "sh"]
        if subprocess.run([*bare, "true"], capture_output=True).returncode != 0:
            print("fonts: left out, mounting is not permitted here, or there are no fonts")
            return
        plain, png = os.path.join(self.root, "fonts", "plain"), os.path.join(self.root, "fonts", "png")
        code, _, error, _ = self.call("run", self.campaign, "--out", plain, under=bare)
        self.expect(code == 0 and not (why := self.whole(plain)), f"without fonts: {error}")
        code, _, error, _ = self.call("run", self.campaign, "--out", png, "--png", under=bare)
        self.expect(code == 2 and "Install a font" in error and not os.path.exists(png), f"PNG without fonts: {code} {error}")
        self.count("reports without fonts", 2)

    def mounted(self, name, size):
        path = os.path.join(self.root, name)
        os.mkdir(path)
        if subprocess.run(["mount", "-t", "tmpfs", "-o", f"size={size}", "tmpfs", path], capture_output=True).returncode != 0:
            print(f"{name}: left out, mounting is not permitted here")
            return None
        return path


ATTACKS = ["kills", "signals", "races", "disk", "place", "steps", "instants", "fonts"]


def main():
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("program")
    words.add_argument("--seconds", type=float, default=60, help="of each attack")
    words.add_argument("--seed", type=int, default=1)
    words.add_argument("--only", default=",".join(ATTACKS))
    asked = words.parse_args()
    faults = Faults(os.path.abspath(asked.program), asked.seed)
    try:
        for attack in asked.only.split(","):
            getattr(faults, attack)(asked.seconds)
    finally:
        shutil.rmtree(faults.root, ignore_errors=True)
    for what, number in sorted(faults.tally.items()):
        print(f"{number:6} {what}")
    print(f"{len(faults.broken)} promises broken")
    return 1 if faults.broken else 0


if __name__ == "__main__":
    sys.exit(main())
