"""Air pressure by altitude, in the ICAO standard atmosphere.

Source: Manual of the ICAO Standard Atmosphere, Doc 7488/3, International Civil Aviation
Organization, 1993: constants and equations for the layer from sea level to 11 km.
Weather moves the real pressure by a few kPa; a standard atmosphere is the middle of it.
"""

from __future__ import annotations

from basinside.science.bounds import Number, within

LOWEST_METRES = 0.0
HIGHEST_METRES = 5_500.0  # as high as the boiling guidance goes: IARC reference manual, p. 130

SEA_LEVEL_KPA = 101.325
SEA_LEVEL_KELVIN = 288.15
LAPSE_KELVIN_PER_METRE = 0.0065
GRAVITY_METRES_PER_SECOND_SQUARED = 9.80665
AIR_JOULES_PER_KILOGRAM_KELVIN = 287.05287
EARTH_RADIUS_METRES = 6_356_766.0  # the nominal radius that makes gravity fit the constant above

PRESSURE_EXPONENT = GRAVITY_METRES_PER_SECOND_SQUARED / (
    AIR_JOULES_PER_KILOGRAM_KELVIN * LAPSE_KELVIN_PER_METRE
)


def pressure_kpa(altitude_metres: Number) -> float:
    """Air pressure at an altitude.

    Parameters
    ----------
    altitude_metres:
        Height above sea level in metres as a map gives it (geometric), 0 to 5,500.

    Returns
    -------
    float
        Absolute pressure in kPa.

    Raises
    ------
    ValueError
        When the altitude is outside 0 to 5,500 m or is no number.

    Examples
    --------
    >>> round(pressure_kpa(2000), 2)
    79.5
    """
    metres = float(within("altitude_metres", altitude_metres, LOWEST_METRES, HIGHEST_METRES))
    geopotential = EARTH_RADIUS_METRES * metres / (EARTH_RADIUS_METRES + metres)
    warmth = 1 - LAPSE_KELVIN_PER_METRE * geopotential / SEA_LEVEL_KELVIN
    return float(SEA_LEVEL_KPA * warmth**PRESSURE_EXPONENT)
