"""The forced week: twelve rooms over their floors, one-minute steps, a switching pattern known beforehand.

  python3 week.py reference   writes week.json with LSODA at tight tolerances (SciPy 1.10.1)
  python3 week.py time        prints JSON: simulated days a second of LSODA and of a NumPy exponential integrator

Room i (from 0): floor capacity 2.0e6 + 3e5 i J/K, room capacity 1.0e6 + 2e5 i J/K, floor to room 60 + 8 i W/K, floor to below
8 + i W/K (10 C), room to outdoors 15 + 3 i W/K, gains 20 + 5 i W. While its valve is open its floor is joined by 80 + 10 i W/K to
water of 36 C. Open in minute m when (m // (20 + 3 i) + i) % 3 == 0. Outdoors in hour h: -4 + 6 sin(2 pi (h - 9) / 24) - h / 48.
All start at 19 C (floors) and 18 C (rooms).
"""
import json
import math
import sys
import time
import numpy as np
from scipy.integrate import solve_ivp
from scipy.linalg import expm

ROOMS, MINUTES = 12, 7 * 24 * 60
i = np.arange(ROOMS)
CF, CR = 2.0e6 + 3e5 * i, 1.0e6 + 2e5 * i
UP, DOWN, LOSS, GAINS, TUBES = 60 + 8.0 * i, 8.0 + i, 15 + 3.0 * i, 20 + 5.0 * i, 80 + 10.0 * i
BELOW, WATER = 10.0, 36.0


def is_open(minute):
    return (minute // (20 + 3 * i) + i) % 3 == 0


def outdoors(hour):
    return -4 + 6 * math.sin(2 * math.pi * (hour - 9) / 24) - hour / 48


def slope(_, t, g, out):
    floor, room = t[:ROOMS], t[ROOMS:]
    up = UP * (floor - room)
    return np.concatenate([
        (g * (WATER - floor) - DOWN * (floor - BELOW) - up) / CF,
        (up - LOSS * (room - out) + GAINS) / CR])


def lsoda(minutes, rtol, atol, keep=None):
    t = np.concatenate([np.full(ROOMS, 19.0), np.full(ROOMS, 18.0)])
    kept = []
    for minute in range(minutes):
        g = np.where(is_open(minute), TUBES, 0.0)
        out = outdoors(minute // 60)
        t = solve_ivp(slope, (0, 60), t, method="LSODA", rtol=rtol, atol=atol, args=(g, out)).y[:, -1]
        if keep and (minute + 1) % keep == 0:
            kept.append([float(x) for x in t])
    return t, kept


def exponential(minutes):
    steps, settle = {}, {}
    for on in (0, 1):
        g = TUBES * on
        a = np.zeros((ROOMS, 2, 2))
        a[:, 0, 0] = -(g + DOWN + UP) / CF
        a[:, 0, 1] = UP / CF
        a[:, 1, 0] = UP / CR
        a[:, 1, 1] = -(UP + LOSS) / CR
        steps[on] = np.array([expm(m * 60) for m in a])
        settle[on] = np.linalg.inv(-a)
    t = np.stack([np.full(ROOMS, 19.0), np.full(ROOMS, 18.0)], axis=1)
    step, inverse = np.stack([steps[0], steps[1]]), np.stack([settle[0], settle[1]])
    for minute in range(minutes):
        on = is_open(minute).astype(int)
        e, inv = step[on, i], inverse[on, i]
        f = np.stack([(TUBES * on * WATER + DOWN * BELOW) / CF, (LOSS * outdoors(minute // 60) + GAINS) / CR], axis=1)
        end = np.einsum("rij,rj->ri", inv, f)
        t = end + np.einsum("rij,rj->ri", e, t - end)
    return np.concatenate([t[:, 0], t[:, 1]])


if sys.argv[1:] == ["reference"]:
    # Minutes at which it is kept: every six hours. Floors first, then rooms.
    _, kept = lsoda(MINUTES, 1e-10, 1e-10, keep=360)
    json.dump(dict(source="SciPy solve_ivp LSODA, rtol and atol 1e-10, restarted each minute", everyMinutes=360, celsius=kept),
              open("week.json", "w"), indent=1)
elif sys.argv[1:] == ["time"]:
    start = time.perf_counter()
    end, _ = lsoda(24 * 60, 1e-6, 1e-8)
    lsoda_rate = 1 / (time.perf_counter() - start)
    best, week = 0.0, None
    for _ in range(3):
        start = time.perf_counter()
        week = exponential(MINUTES)
        best = max(best, 7 / (time.perf_counter() - start))
    print(json.dumps(dict(lsodaDaysPerS=lsoda_rate, numpyDaysPerS=best, lsodaDayEnd=list(map(float, end)), numpyWeekEnd=list(map(float, week)))))
else:
    sys.exit(__doc__)
