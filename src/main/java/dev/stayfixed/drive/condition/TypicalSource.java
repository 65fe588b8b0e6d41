package dev.stayfixed.drive.condition;

import dev.stayfixed.reason.Kind;

/** Where typical figures are from. */
enum TypicalSource implements Kind {
    MAKER_2003,
    NEW_YORK_AND_PATTERN_B,
    MEMORY,
    TWO_MAKERS_2003,
    THERMOSTAT_AND_MAKER_2005,
    PRACTICE,
    NEW_YORK_AND_MAKER_2024,
    PATTERN_B_AND_MEMORY
}
