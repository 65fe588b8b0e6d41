package dev.stayfixed.simulator;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A drive in numbers, as a driver's form or a recording device would give it.
 *
 * @param startCoolant °C, likewise peakCoolant and ambient
 * @param runTime s, likewise fastTime (at 40 km/h or more) and longestIdle
 * @param barometer kPa
 * @param fuelLevel per cent at the start
 * @param soak hours with the engine off before the start
 * @param distance km
 */
public record Summary(
        int startCoolant,
        int peakCoolant,
        int runTime,
        int fastTime,
        int longestIdle,
        int ambient,
        int barometer,
        double fuelLevel,
        double soak,
        double distance) {

    /** By the names that the service takes. */
    public Map<String, Object> asMap() {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("startCoolant", startCoolant);
        map.put("peakCoolant", peakCoolant);
        map.put("runTime", runTime);
        map.put("fastTime", fastTime);
        map.put("longestIdle", longestIdle);
        map.put("ambient", ambient);
        map.put("barometer", barometer);
        map.put("fuelLevel", fuelLevel);
        map.put("soak", soak);
        map.put("distance", distance);
        return map;
    }
}
