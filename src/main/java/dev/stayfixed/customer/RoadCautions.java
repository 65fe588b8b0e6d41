package dev.stayfixed.customer;

import java.util.List;

/**
 * The customary cautions for a drive, for somebody who is no technician. They follow published service texts and a state government's
 * tutorial for drivers (flashing MIL); stopping on overheating, smoke, fuel smell, brakes or steering is from memory.
 */
public final class RoadCautions {

    /** The page is for a parked car. */
    public static final String PARKED_ONLY = "Only use this page when you are parked.";

    private static final List<String> ALL = List.of(
            "Traffic law, speed limits and the road come first. Leave out any part of this drive that is not safe or not legal"
                    + " where you are.",
            "Do not read, type or handle a scan tool while you drive. If a tool has to be watched, a second person does it from the"
                    + " rear seat.",
            "Engine warning lamp flashing: ease off, stop where it is safe, and call the workshop. Do not go on with this drive.",
            "Overheating, smoke, a smell of fuel, a red lamp, odd brakes or steering: stop where it is safe and call the workshop.",
            "Never let the engine run in a closed garage: exhaust gas can kill. Keep hands, hair and clothes away from fans and"
                    + " hot parts, even with the engine off.",
            "Before you let the car slow down by itself, look behind you. Stay in gear, and brake whenever traffic asks for it.",
            "Do not disconnect the battery and do not have codes cleared: that would start the count again.");

    private RoadCautions() {}

    public static List<String> all() {
        return ALL;
    }
}
