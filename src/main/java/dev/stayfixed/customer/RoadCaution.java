package dev.stayfixed.customer;

import dev.stayfixed.reason.Kind;

/**
 * The customary cautions for a drive, for somebody who is no technician. They follow published service texts and a state government's
 * tutorial for drivers (flashing MIL); stopping on overheating, smoke, fuel smell, brakes or steering is from memory.
 */
public enum RoadCaution implements Kind {
    LAW_FIRST,
    HANDS_ON_THE_WHEEL,
    LAMP_FLASHING,
    STOP_AND_CALL,
    NO_CLOSED_GARAGE,
    LOOK_BEHIND,
    DO_NOT_CLEAR
}
