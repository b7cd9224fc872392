#!/usr/bin/env python3
"""How much faster the engine is than the same pipeline in vectorised NumPy and SciPy, both on one thread.

    tests/bench/same_pipeline.py build/fettle-bench        (Python 3 with NumPy and SciPy)

The benchmark hands over its two recordings (raw float64, g); both are timed in this run, the best of several
turns each. The script does what an examination of one channel with two bearings does: checks and levels,
spectrum, band envelopes plain and pre-whitened, local floors, speed, masks, ranks, weighing over the cage shift,
claims. It leaves out what has no place in arrays: names, rows, sentences, measures of other families. SciPy's
running median is slow for what it does, so the ratio is given without the floors as well. The weights of both are
printed, to show that both do the same.
"""
import os

for threads in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[threads] = "1"

import json
import subprocess
import sys
import tempfile
import time

import numpy as np
from scipy import fft, ndimage

RATE, MAINS, SHAFT_RPM, REACH_SPEED = 12000, 60.0, 1772.0, 0.004
KAPPA, FLOOR_HZ, LEAST_HZ, TOP_HZ, MASK_BINS = 0.15, 20.0, 2.0, 4500.0, 3.5
SHIFT_SHARE, SHIFT_SPREAD, SHIFT_REACH, STEP_BINS, STOP_DBAN = 0.7, 0.005, 0.03, 0.7, 10.0
BEARINGS = {"DE": (9, 7.94, 39.04), "NDE": (8, 6.746, 28.5)}  # balls, ball mm, pitch mm

clock = {}


def timed(stage):
    def wrap(work):
        def run(*arguments):
            start = time.process_time()
            result = work(*arguments)
            clock[stage] = clock.get(stage, 0) + time.process_time() - start
            return result
        return run
    return wrap


@timed("transforms")
def rfft(x):
    return fft.rfft(x, workers=1)


@timed("transforms")
def ifft(x):
    return fft.ifft(x, workers=1)


@timed("floors")
def over_floor(power, df):
    width = int(round(FLOOR_HZ / df))
    first = int(np.ceil(LEAST_HZ / df))
    z = np.zeros_like(power)
    floor = ndimage.median_filter(power[first:], size=width, mode="nearest") / np.log(2)
    z[first:] = power[first:] / floor
    return z


@timed("levels")
def levels(x, half, df):
    f = np.arange(half.size) * df
    amplitude = np.abs(half) * 9.80665 / x.size
    inside = (f >= 10) & (f <= 1000)
    velocity = np.sqrt(2 * np.sum((amplitude[inside] / (2 * np.pi * f[inside])) ** 2)) * 1000
    rms = np.sqrt(np.mean(x**2))
    return velocity, rms, np.max(np.abs(x)) / rms, np.mean(x**4) / rms**4


def bands():
    low, high = 0.02 * RATE, 0.48 * RATE
    for level in (1, 3, 6, 12):
        width = (high - low) / level
        if level == 1 or width >= 900:
            for i in range(level):
                yield level, low + i * width, low + (i + 1) * width


def hann_power(bins):
    smooth = 0.5 * bins[1:-1] - 0.25 * (bins[:-2] + bins[2:])
    return np.concatenate(([0], smooth.real**2 + smooth.imag**2)).astype(np.float32)


def envelope_power(half, df, low, high):
    first, last = int(np.ceil(low / df)), int(high / df)
    size = fft.next_fast_len(2 * (last - first))
    shifted = np.zeros(size, np.complex64)
    shifted[: last - first] = half[first:last]
    analytic = ifft(shifted)
    spectrum = rfft(analytic.real**2 + analytic.imag**2)
    spectrum[0] = 0
    return hann_power(spectrum)[: int(min(TOP_HZ, 0.9 * (last - first) * df) / df) + 1]


@timed("speed")
def speed(z, df):
    """The comb of shaft orders 1 to 10 in the spectrum over its floor, about the given speed."""
    given = SHAFT_RPM / 60
    tried = np.arange(given * (1 - REACH_SPEED), given * (1 + REACH_SPEED), df / 40)
    k = np.rint(np.outer(tried, np.arange(1, 11)) / df).astype(int)
    return tried[np.argmax(np.log1p(z[k]).sum(axis=1))]


@timed("masks")
def masked(bins, df, shaft):
    mask = np.zeros(bins, bool)
    for base in (shaft, MAINS):
        centres = np.arange(1, int(bins * df / base)) * base
        near = np.rint(centres / df).astype(int)[:, None] + np.arange(-4, 5)
        keep = (np.abs(near - centres[:, None] / df) <= MASK_BINS) & (near < bins)
        mask[near[keep]] = True
    return mask


@timed("ranks")
def ranked(z, mask, df):
    top = z.size
    peak = np.maximum(z, np.maximum(np.concatenate(([0], z[:-1])), np.concatenate((z[1:], [0]))))
    reference = ~mask[:top]
    reference[: int(np.ceil(LEAST_HZ / df))] = False
    heights = np.sort(peak[reference])
    as_high = heights.size - np.searchsorted(heights, peak, side="left")
    padded, counted = np.pad(peak, 3), np.pad(reference, 3)
    own_high = np.zeros(top, int)
    own = np.zeros(top, int)
    for j in range(7):
        own += counted[j : j + top]
        own_high += counted[j : j + top] & (padded[j : j + top] >= peak)
    p = (1 + as_high - own_high) / (1 + heights.size - own)
    factor = np.where(mask[:top], 1, KAPPA * p ** (KAPPA - 1))
    return np.append(factor, 1)


def families(balls, ball, pitch):
    """Per element: order of each line, how it moves with the cage shift, w."""
    phi = (1 - ball / pitch) / 2
    bsf2 = pitch / ball * (1 - (ball / pitch) ** 2)
    out = {}
    for name, order, slope, weights, sides, side, side_w in (
        ("outer race", balls * phi, balls * phi, (.95, .8, .7, .6, .5, .4, .4, .4, .3, .3, .3, .3), (-1, 1), 1, .25),
        ("inner race", balls * (1 - phi), -balls * phi, (.9, .8, .6, .5, .4, .4, .3, .3), (-2, -1, 1, 2), 1, .5),
        ("rolling element", bsf2, bsf2, (.8, .7, .6, .5, .4, .4, .3, .3), (-2, -1, 1, 2), phi, .5),
        ("cage", phi, phi, (.8, .7, .5, .4, .3), (), 0, 0),
    ):
        h = np.arange(1, len(weights) + 1)
        lines = [(i * order, i * slope, w) for i, w in zip(h, weights)]
        lines += [(i * order + j * side, i * slope, side_w) for i in (1, 2) for j in sides]
        out[name] = np.array(lines).T
    return out


@timed("weighing")
def weigh(lines, factors, omega, mask, shaft, df):
    order, slope, w = lines
    step = STEP_BINS * df / (shaft * np.max(np.abs(slope)))
    c = np.arange(-SHIFT_REACH, SHIFT_REACH + step, step)
    prior = np.exp(-0.5 * (c / SHIFT_SPREAD) ** 2)
    prior = SHIFT_SHARE * prior / prior.sum() + (1 - SHIFT_SHARE) / c.size
    hz = shaft * (order + np.outer(c, slope))
    k = np.clip(np.rint(hz / df).astype(int), 0, factors.shape[1] - 1)
    e = np.prod(1 - w + w * factors[:, k], axis=2)
    e = np.where(mask[np.minimum(k[:, 0], mask.size - 1)], np.minimum(e, 1), e)
    terms = omega[:, None] * prior * e
    best = np.unravel_index(np.argmax(terms), terms.shape)
    return 10 * np.log10(terms.sum()), hz[best[1]]


@timed("weighing")
def claim(factors, hz, shaft, df):
    centres = (hz[:, None] + shaft * np.arange(-3, 4)).ravel()
    near = np.rint(centres / df).astype(int)[:, None] + np.arange(-3, 4)
    near = near[(near > 0) & (near < factors.shape[1])]
    factors[:, near] = 1


def examine(x):
    x = (x - x.mean()).astype(np.float32)
    df = RATE / x.size
    half = rfft(x)
    levels(x, half, df)
    plain = over_floor(hann_power(half), df)
    shaft = speed(plain, df)
    tree = list(bands())
    depth = len({level for level, _, _ in tree})
    views, omega = [], []
    for white in (False, True):
        if white:
            half = half / np.maximum(np.abs(half), 1e-30)
        for level, low, high in tree:
            views.append(over_floor(envelope_power(half, df, low, high), df))
            omega.append(1 / (2 * depth * level))
    bins = max(view.size for view in views)
    mask = masked(bins, df, shaft)
    factors = np.ones((len(views), bins + 1))
    for row, view in zip(factors, views):
        row[: view.size] = ranked(view, mask, df)[:-1]
    asked = {(end, name): lines for end, size in BEARINGS.items() for name, lines in families(*size).items()}
    omega = np.array(omega)
    weights, claimed = {}, set()
    found = {key: weigh(lines, factors, omega, mask, shaft, df) for key, lines in asked.items()}
    while True:
        for key, (weight, hz) in found.items():
            weights[key] = min(weight, weights.get(key, weight))
        left = [key for key in asked if key not in claimed]
        best = max(left, key=lambda key: weights[key], default=None)
        if best is None or weights[best] < STOP_DBAN:
            return weights
        claimed.add(best)
        claim(factors, found[best][1], shaft, df)
        found = {key: weigh(asked[key], factors, omega, mask, shaft, df) for key in asked if key not in claimed}


def engine_ms(bench, name):
    out = subprocess.run([bench, "--benchmark_filter=Ratio/" + name, "--benchmark_format=json"],
                         check=True, capture_output=True, text=True).stdout
    row = json.loads(out)["benchmarks"][0]
    return row["examine_ms"], row["transforms_ms"]


def main():
    bench = sys.argv[1]
    print(f"{'case':<12}{'engine ms':>10}{'of it FFT':>11}{'script ms':>11}{'of it FFT':>11}{'floors':>8}"
          f"{'ratio':>8}{'without floors':>16}")
    for name in ("sound", "outer race"):
        with tempfile.NamedTemporaryFile() as file:
            subprocess.run([bench, "--record", name, file.name], check=True)
            x = np.fromfile(file.name)
        best, stages = np.inf, {}
        for _ in range(5):
            clock.clear()
            start = time.process_time()
            weights = examine(x)
            took = time.process_time() - start
            if took < best:
                best, stages = took, dict(clock)
        ms, transforms = engine_ms(bench, name)
        script, floors = 1000 * best, 1000 * stages["floors"]
        print(f"{name:<12}{ms:>10.1f}{transforms / ms:>10.0%} {script:>10.1f}"
              f"{1000 * stages['transforms'] / script:>10.0%} {floors / script:>8.0%}{script / ms:>8.1f}"
              f"{(script - floors) / ms:>16.1f}")
        top = max(weights, key=weights.get)
        print(f"{'':<12}the script's strongest: {top[1]} of {top[0]}, {weights[top]:.1f} decibans")


if __name__ == "__main__":
    main()
