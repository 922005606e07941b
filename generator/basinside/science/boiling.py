"""Where water boils.

Source: the ICAO standard atmosphere (`atmosphere`) and the saturation line of IAPWS R7-97(2012)
(`steam`). At 101.325 kPa the answer is 99.97 °C, not 100: the temperature scale of 1990 no longer
fixes the boiling point.
"""

from __future__ import annotations

from basinside.science.atmosphere import pressure_kpa
from basinside.science.bounds import Number
from basinside.science.steam import saturation_celsius


def boiling_point_celsius(altitude_metres: Number) -> float:
    """Temperature of boiling water in an open or loosely covered pot.

    Parameters
    ----------
    altitude_metres:
        Height above sea level in metres, 0 to 5,500.

    Returns
    -------
    float
        Temperature in °C.

    Raises
    ------
    ValueError
        When the altitude is outside 0 to 5,500 m or is no number.

    Examples
    --------
    >>> round(boiling_point_celsius(2350), 1)
    92.1
    """
    return saturation_celsius(pressure_kpa(altitude_metres))
