"""Times the built command line against reference.py on the same files, in turn, on this machine.

Usage: python3 tests/bench/bench.py [--runs 5] [--rows]
Builds the recordings it needs in a temporary folder, runs them in turn, and prints the median wall time of each, the
ratio round by round, and the peak memory. --rows also times 0.1, 1 and 10 million rows to show how cost grows.
Needs pandas and SciPy; on Debian as root it installs them.
"""
import argparse
import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time

HERE = os.path.dirname(os.path.abspath(__file__))
ROOT = os.path.dirname(os.path.dirname(HERE))
CLI = [shutil.which("node") or "node", os.path.join(ROOT, "dist", "cli", "perrev.js")]
VEHICLE = "--tire 265/70R17 --axle 3.73 --gear 0.70 --cylinders 8 --speed 62mph --json".split()


def need_libraries():
    try:
        import pandas  # noqa: F401
        import scipy  # noqa: F401
    except ImportError:
        if os.path.exists("/etc/debian_version") and os.geteuid() == 0:
            subprocess.run(["apt-get", "update", "-qq"], check=False)
            subprocess.run(["apt-get", "install", "-y", "-qq", "python3-pandas", "python3-scipy"], check=True)
        else:
            sys.exit("The bench needs pandas and SciPy for Debian's python3: apt-get install python3-pandas python3-scipy")


def write_recording(path, seconds, rate_hz, seed):
    """A cruise at 62 mph: floor noise, tire 1x..3x, driveshaft 1x and 2x, engine firing order, gravity on z."""
    import numpy as np

    random = np.random.default_rng(seed)
    count = seconds * rate_hz
    block = 1_000_000
    wheel_hz, shaft_hz, engine_hz = 11.2, 41.8, 29.2
    lines = [(wheel_hz, 0.03), (2 * wheel_hz, 0.02), (shaft_hz, 0.3), (2 * shaft_hz, 0.1), (4 * engine_hz, 0.05)]
    with open(path, "w") as file:
        file.write("time_s,ax_mps2,ay_mps2,az_mps2\n")
        for start in range(0, count, block):
            t = np.arange(start, min(count, start + block)) / rate_hz
            tone = sum(a * np.sin(2 * np.pi * f * t + f) for f, a in lines)
            data = random.normal(0, 0.2, (3, len(t))) + np.outer([0.3, 0.5, 1.0], tone)
            data[2] += 9.81
            rows = np.column_stack([t, *data])
            file.write("\n".join("%.5f,%.5f,%.5f,%.5f" % tuple(row) for row in rows))
            file.write("\n")


def timed(command):
    """Wall seconds and peak resident MB of a command that must succeed."""
    start = time.perf_counter()
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
    errors = process.stderr.read()
    _, status, usage = os.wait4(process.pid, 0)
    seconds = time.perf_counter() - start
    if os.waitstatus_to_exitcode(status) != 0:
        sys.exit(f"{' '.join(command)} failed:\n{errors.decode()}")
    return seconds, usage.ru_maxrss / 1024


def compare(name, path, runs):
    """Two of ours against the script: the spectra alone (less than it does: no map, no peaks), and the whole diagnosis (more)."""
    python = ["/usr/bin/python3" if os.path.exists("/usr/bin/python3") else sys.executable]
    commands = {
        "script": python + [os.path.join(HERE, "reference.py"), path],
        "spectrum": CLI + ["spectrum", path],
        "diagnose": CLI + ["diagnose", path] + VEHICLE,
    }
    taken = {title: [] for title in commands}
    for run in range(runs + 1):
        for title, command in commands.items():
            result = timed(command)
            if run > 0:  # the first round warms the file cache
                taken[title].append(result)
    for title, results in taken.items():
        ratio = statistics.median(a[0] / b[0] for a, b in zip(results, taken["script"]))
        print(
            f"{name:24s} {title:9s} {statistics.median(r[0] for r in results):7.2f} s {max(r[1] for r in results):5.0f} MB"
            f"   over the script {ratio:.2f}",
            flush=True,
        )


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--runs", type=int, default=5)
    parser.add_argument("--rows", action="store_true", help="also time 0.1, 1 and 10 million rows")
    arguments = parser.parse_args()
    need_libraries()
    if not os.path.exists(CLI[1]):
        sys.exit("Build the command line first: npm run build:cli")
    with tempfile.TemporaryDirectory() as folder:
        small = os.path.join(folder, "60s-1kHz.csv")
        large = os.path.join(folder, "600s-4kHz.csv")
        write_recording(small, 60, 1000, 1)
        compare("60 s, 1 kHz, 3 axes", small, arguments.runs)
        write_recording(large, 600, 4000, 2)
        compare("600 s, 4 kHz, 3 axes", large, arguments.runs)
        if arguments.rows:
            for millions, seconds, rate in ((0.1, 100, 1000), (1, 250, 4000), (10, 2500, 4000)):
                path = os.path.join(folder, "rows.csv")
                write_recording(path, seconds, rate, 3)
                results = [timed(CLI + ["diagnose", path] + VEHICLE) for _ in range(3)]
                print(
                    f"{millions:5.1f} million rows ({os.path.getsize(path) / 1e6:.0f} MB)"
                    f"  {statistics.median(r[0] for r in results):7.2f} s {max(r[1] for r in results):6.0f} MB",
                    flush=True,
                )


if __name__ == "__main__":
    # The system's Python has the Debian packages; another one on the path may not.
    if os.path.exists("/usr/bin/python3") and os.path.realpath(sys.executable) != os.path.realpath("/usr/bin/python3"):
        os.execv("/usr/bin/python3", ["/usr/bin/python3", os.path.abspath(__file__), *sys.argv[1:]])
    main()
