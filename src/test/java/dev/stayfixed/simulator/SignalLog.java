package dev.stayfixed.simulator;

import java.time.Instant;
import java.util.List;
import java.util.Locale;

/** Writes the samples of a drive as CSV, one row a second. */
public final class SignalLog {

    private SignalLog() {}

    /** COVESA VSS 6.0 names: distance in metres. */
    public static String vss(Instant start, List<Sample> samples) {
        StringBuilder csv = new StringBuilder("Timestamp,Vehicle.Speed,Vehicle.Powertrain.CombustionEngine.Speed,"
                + "Vehicle.Powertrain.CombustionEngine.EngineCoolant.Temperature,Vehicle.OBD.EngineLoad,"
                + "Vehicle.OBD.IntakeTemp,Vehicle.TraveledDistanceSinceStart\n");
        for (Sample s : samples) {
            csv.append(String.format(
                    Locale.ROOT,
                    "%s,%d,%d,%d,%.1f,%d,%d\n",
                    start.plusSeconds(s.second()),
                    s.speed(),
                    s.rpm(),
                    s.coolant(),
                    s.load(),
                    s.intakeAir(),
                    Math.round(s.distance() * 1000)));
        }
        return csv.toString();
    }

    /** Service and PID of SAE J1979 as headers; the time is the seconds since the start. */
    public static String pids(List<Sample> samples) {
        StringBuilder csv = new StringBuilder("time_s,01-0D,01-0C,01-05,01-04,01-0F,01-11,01-1F\n");
        for (Sample s : samples) {
            csv.append(String.format(
                    Locale.ROOT,
                    "%d.0,%d,%d,%d,%.1f,%d,%.1f,%d\n",
                    s.second(),
                    s.speed(),
                    s.rpm(),
                    s.coolant(),
                    s.load(),
                    s.intakeAir(),
                    s.throttle(),
                    s.second()));
        }
        return csv.toString();
    }

    /** A shop's own headers, semicolons, decimal commas, day first, CRLF. */
    public static String free(Instant start, List<Sample> samples) {
        StringBuilder csv =
                new StringBuilder("Datum;Uhrzeit;Tempo km/h;Drehzahl 1/min;Kühlmittel °C;Last %;Weg km\r\n");
        for (Sample s : samples) {
            String time = start.plusSeconds(s.second()).toString();
            csv.append(String.format(
                    Locale.GERMANY,
                    "%s.%s.%s;%s;%d;%d;%d;%.1f;%.3f\r\n",
                    time.substring(8, 10),
                    time.substring(5, 7),
                    time.substring(0, 4),
                    time.substring(11, 19),
                    s.speed(),
                    s.rpm(),
                    s.coolant(),
                    s.load(),
                    s.distance()));
        }
        return csv.toString();
    }
}
