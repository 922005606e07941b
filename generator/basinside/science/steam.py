"""Saturated steam: which pressure goes with which temperature, and what a gauge then shows.

Source: IAPWS R7-97(2012), Revised Release on the IAPWS Industrial Formulation 1997 for the
Thermodynamic Properties of Water and Steam, section 8 (region 4): table 34 and equations 29 to 31.

A gauge answer holds only for steam without air, after it has come off steadily, and never allows
a pressure above the vessel's mark or a change to a weight or valve. Whoever shows one says so.

What a recorded run did is worked out beside this: `lethality.f0_minutes` and `cycle.judge_cycle`
are reached from here too.
"""

from __future__ import annotations

from math import sqrt

from basinside.science.atmosphere import pressure_kpa
from basinside.science.bounds import Number, exact, within
from basinside.science.cycle import CycleJudgement, judge_cycle
from basinside.science.lethality import f0_minutes

__all__ = [
    "HIGHEST_CELSIUS",
    "HIGHEST_KPA",
    "LOWEST_CELSIUS",
    "LOWEST_KPA",
    "CycleJudgement",
    "f0_minutes",
    "gauge_pressure_kpa",
    "judge_cycle",
    "saturation_celsius",
    "saturation_pressure_kpa",
    "temperature_at_gauge",
]

CELSIUS_AT_ZERO_KELVIN = -273.15

# R7-97(2012), table 34: coefficients of equations 29 to 31, in their printed order.
N1 = 0.11670521452767e4
N2 = -0.72421316703206e6
N3 = -0.17073846940092e2
N4 = 0.12020824702470e5
N5 = -0.32325550322333e7
N6 = 0.14915108613530e2
N7 = -0.48232657361591e4
N8 = 0.40511340542057e6
N9 = -0.23855557567849
N10 = 0.65017534844798e3

# R7-97(2012), section 8: from 273.15 K to the critical point.
LOWEST_CELSIUS = 0.0
HIGHEST_CELSIUS = 373.946  # 647.096 K
# The pressures are printed as 611.213 Pa and 22.064 MPa; they are widened in the last figure here
# so that both ends of equation 30 are inside equation 31.
LOWEST_KPA = 0.6112126
HIGHEST_KPA = 22_064.000001
KPA_IN_MPA = 1_000.0  # the equations reduce by 1 MPa and 1 K


def saturation_pressure_kpa(celsius: Number) -> float:
    """Pressure of steam in balance with water at a temperature (equation 30).

    Parameters
    ----------
    celsius:
        Temperature in °C, 0 to 373.946.

    Returns
    -------
    float
        Absolute pressure in kPa.

    Raises
    ------
    ValueError
        When the temperature is outside that range or is no number.

    Examples
    --------
    >>> round(saturation_pressure_kpa(121), 2)
    205.04
    """
    read = float(within("celsius", celsius, LOWEST_CELSIUS, HIGHEST_CELSIUS))
    kelvin = read - CELSIUS_AT_ZERO_KELVIN
    theta = kelvin + N9 / (kelvin - N10)
    a = theta**2 + N1 * theta + N2
    b = N3 * theta**2 + N4 * theta + N5
    c = N6 * theta**2 + N7 * theta + N8
    fourth_root: float = 2 * c / (-b + sqrt(b**2 - 4 * a * c))
    return float(fourth_root**4 * KPA_IN_MPA)


def saturation_celsius(kpa: Number) -> float:
    """Temperature at which water boils under a pressure (equation 31).

    Parameters
    ----------
    kpa:
        Absolute pressure of the steam in kPa, 0.611213 to 22,064.

    Returns
    -------
    float
        Temperature in °C.

    Raises
    ------
    ValueError
        When the pressure is outside that range or is no number.

    Examples
    --------
    >>> round(saturation_celsius(101.325), 2)
    99.97
    """
    read = float(within("kpa", kpa, LOWEST_KPA, HIGHEST_KPA))
    beta = sqrt(sqrt(read / KPA_IN_MPA))
    e = beta**2 + N3 * beta + N6
    f = N1 * beta**2 + N4 * beta + N7
    g = N2 * beta**2 + N5 * beta + N8
    d = 2 * g / (-f - sqrt(f**2 - 4 * e * g))
    kelvin = (N10 + d - sqrt((N10 + d) ** 2 - 4 * (N9 + N10 * d))) / 2
    return kelvin + CELSIUS_AT_ZERO_KELVIN


def gauge_pressure_kpa(celsius: Number, altitude_metres: Number) -> float:
    """What a gauge shows when steam without air is at a temperature, at an altitude.

    Parameters
    ----------
    celsius:
        Temperature of the steam in °C, 0 to 373.946.
    altitude_metres:
        Height above sea level in metres, 0 to 5,500.

    Returns
    -------
    float
        Gauge pressure in kPa; below nought when the steam is cooler than boiling water there.

    Raises
    ------
    ValueError
        When a parameter is outside its range.

    Examples
    --------
    >>> round(gauge_pressure_kpa(121.1, 2000), 1)
    126.2
    """
    return saturation_pressure_kpa(celsius) - pressure_kpa(altitude_metres)


def temperature_at_gauge(
    gauge_kpa: Number, altitude_metres: Number, air_fraction: Number = 0.0
) -> float:
    """How hot the steam is when a gauge shows a pressure, at an altitude.

    Air left in the vessel presses on the gauge and does not heat: the steam has only its own
    share of the pressure (Dalton's law of partial pressures).

    Parameters
    ----------
    gauge_kpa:
        Gauge pressure in kPa.
    altitude_metres:
        Height above sea level in metres, 0 to 5,500.
    air_fraction:
        Share of the vessel's gas that is air, by volume, from 0 to below 1.

    Returns
    -------
    float
        Temperature in °C of saturated steam at its share of the pressure.

    Raises
    ------
    ValueError
        When a parameter, or the steam's pressure that follows, is outside its range.

    Examples
    --------
    >>> round(temperature_at_gauge(106, 2000), 2)
    117.85
    """
    air = float(exact("air_fraction", air_fraction))
    if not 0 <= air < 1:
        raise ValueError(f"air_fraction must be 0 to below 1, not {air_fraction}")
    absolute_kpa = float(exact("gauge_kpa", gauge_kpa)) + pressure_kpa(altitude_metres)
    return saturation_celsius(absolute_kpa * (1 - air))
