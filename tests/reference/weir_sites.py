#!/usr/bin/env python3
"""Reservoir level and flow at the toe below a broad crest, a sharp crest and a labyrinth, without any code of quell.

Prints the expected numbers of tests/cli/weirs.txt. Formulas typed again from the publications: Hager and Schwalt 1994 and Bos 1989
(broad crests), Rehbock's in ISO 1438 with the velocity head of the approach, Crookston and Tullis 2013 (half-round labyrinth, 15
degrees), Villemonte 1947 (drowned weir), all recalled; boundary layer after Campbell, Cox and Boyd (1965).
Usage: weir_sites.py
"""
from math import atan, cos, sin, sqrt

from scipy.optimize import brentq

G = 9.81


def head_of(discharge_at, discharge):
    return brentq(lambda head: discharge_at(head) - discharge, 1e-3, 50.0, xtol=1e-14)


def square_edged(head, width, length):
    return 0.42 * (1 - 2 / 9 / (1 + (head / length) ** 4)) * width * sqrt(2 * G) * head ** 1.5


def rounded(head, width, length):
    return (2 / 3) ** 1.5 * sqrt(G) * (0.93 + 0.1 * head / length) * width * head ** 1.5


def rehbock(h, width, height):
    return 2 / 3 * (0.602 + 0.083 * h / height) * sqrt(2 * G) * width * (h + 0.0012) ** 1.5


def sharp_head(discharge, width, height):
    h = head_of(lambda at: rehbock(at, width, height), discharge)
    return h + (discharge / (width * (h + height))) ** 2 / (2 * G)


def labyrinth_15(head, length, height):
    r = head / height
    return 2 / 3 * (0.0316 * r ** (-3.27 * r ** 0.4849) + 0.3349) * length * sqrt(2 * G) * head ** 1.5


def critical_depth(discharge, width):
    return ((discharge / width) ** 2 / G) ** (1 / 3)


def toe(discharge, width, energy_level, start_level, slope, apron, ks):
    """Potential flow and boundary layer from the start of the chute; the layer must not reach the surface."""
    angle = atan(slope)
    q = discharge / width
    length = (start_level - apron) / sin(angle)
    fall = energy_level - apron
    critical = (q * q / G / cos(angle)) ** (1 / 3)
    depth = brentq(lambda d: d * cos(angle) + q * q / (2 * G * d * d) - fall, 1e-4, critical, xtol=1e-14)
    layer = 0.08 * length * (length / ks) ** -0.233
    assert layer < depth
    energy = fall - 0.22 * layer * (q / depth) ** 3 / (2 * G * q)
    y1 = brentq(lambda y: y + q * q / (2 * G * y * y) - energy, 1e-4, critical_depth(discharge, width), xtol=1e-14)
    froude = q / y1 / sqrt(G * y1)
    return {"E1": energy, "y1": y1, "V1": q / y1, "F1": froude, "y2": y1 / 2 * (sqrt(1 + 8 * froude ** 2) - 1)}


broad = head_of(lambda head: square_edged(head, 20, 4), 100)
print("broad, square:", 30 + broad, toe(100, 20, 30 + broad, 30, 0.5, 20.06, 0.0006))
print("broad, rounded:", 30 + head_of(lambda head: rounded(head, 20, 4), 100))
sharp = sharp_head(100, 20, 4)
floor = 1.5 * critical_depth(100, 20)
print("sharp:", 30 + sharp, toe(100, 20, 27 + floor, 27, 0.5, 20.06, 0.0006))
print("sharp, floor at 29 m, share that passes:", (1 - ((29 + floor - 30) / sharp) ** 1.5) ** 0.385)
labyrinth = head_of(lambda head: labyrinth_15(head, 58, 3), 150)
print("labyrinth:", 58 + labyrinth,
      toe(150, 18, 55 + 1.5 * critical_depth(150, 18), 55, 0.4, 45.30, 0.0006))
