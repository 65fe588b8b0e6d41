package dev.stayfixed.bench;

import dev.stayfixed.drive.condition.Evaluation;
import dev.stayfixed.drive.condition.TypicalConditions;
import dev.stayfixed.drive.signal.SignalFacts;
import dev.stayfixed.drive.signal.SignalMeter;
import dev.stayfixed.drive.signal.SignalRules;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.recording.LogLimits;
import dev.stayfixed.recording.LogReader;
import dev.stayfixed.recording.LogReading;
import java.io.IOException;
import java.util.OptionalDouble;

/**
 * Judges a generated log of so many megabytes: {@code java -Xmx256m ... dev.stayfixed.bench.BigLog 200}. It ends with an
 * OutOfMemoryError where anything is kept by row.
 */
public final class BigLog {

    private BigLog() {}

    public static void main(String[] arguments) throws IOException {
        long megabytes = arguments.length == 0 ? 200 : Long.parseLong(arguments[0]);
        SignalMeter meter = SignalFacts.meter(SignalRules.EXACT, OptionalDouble.empty());
        Evaluation evaluation =
                TypicalConditions.of(MonitorGroup.EGR_VVT).get(0).set().evaluation(OptionalDouble.empty());
        long begun = System.nanoTime();
        LogReading reading = new LogReader(LogLimits.USUAL)
                .readAsProposed(new GeneratedLog(megabytes << 20), meter.andThen(evaluation));
        double seconds = (System.nanoTime() - begun) / 1e9;
        System.out.printf(
                "%d MB, %d rows in %.1f s, largest heap %d MB, run time %d s, %s%n",
                megabytes,
                reading.report().rows(),
                seconds,
                Runtime.getRuntime().maxMemory() >> 20,
                meter.facts().times().running() / 1000,
                evaluation.report().overall().held());
    }
}
