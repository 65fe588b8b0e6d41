package dev.stayfixed.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.stayfixed.drive.signal.SignalFacts;
import dev.stayfixed.drive.signal.SignalMeter;
import dev.stayfixed.drive.signal.SignalRules;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** One drive written in several ways is one drive; the seed of a failure stands in the test's name. */
class LogPropertiesTest {

    static LongStream seeds() {
        return LongStream.range(0, 40);
    }

    private static String log(
            long seed, String speedUnit, double speedScale, String heatUnit, double heatScale, double zero) {
        Random random = new Random(seed);
        StringBuilder log = new StringBuilder(
                "Time (s),Engine RPM [rpm],Vehicle speed [%s],Coolant temp [%s]%n".formatted(speedUnit, heatUnit));
        double time = 0.5;
        for (int i = 0; i < 300; i++) {
            double speed = random.nextInt(121) + 0.5;
            double heat = random.nextInt(100);
            log.append(String.format(
                    Locale.ROOT,
                    "%.1f,%d,%.9f,%.9f%n",
                    time,
                    random.nextInt(3_000),
                    speed * speedScale,
                    heat * heatScale + zero));
            time += random.nextInt(52) / 10.0;
        }
        return log.toString();
    }

    private static SignalFacts facts(String log) throws IOException {
        SignalMeter meter = SignalFacts.meter(SignalRules.EXACT, OptionalDouble.empty());
        LogReport report = new LogReader(LogLimits.USUAL)
                .readAsProposed(new ByteArrayInputStream(log.getBytes(StandardCharsets.UTF_8)), meter)
                .report();
        assertThat(report.implausible()).isEmpty();
        return meter.facts();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void the_unit_does_not_matter(long seed) throws IOException {
        SignalFacts metric = facts(log(seed, "km/h", 1, "°C", 1, 0));
        SignalFacts imperial = facts(log(seed, "mph", 1 / 1.609344, "°F", 1.8, 32));
        assertThat(imperial.rows()).isEqualTo(metric.rows());
        assertThat(imperial.times()).isEqualTo(metric.times());
        assertThat(imperial.distance().orElseThrow())
                .isCloseTo(metric.distance().orElseThrow(), within(1e-6));
        assertThat(imperial.coolantRise().orElseThrow())
                .isCloseTo(metric.coolantRise().orElseThrow(), within(1e-6));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void the_decimal_mark_and_the_separator_do_not_matter(long seed) throws IOException {
        String points = log(seed, "km/h", 1, "°C", 1, 0);
        assertThat(facts(points.replace(',', ';').replace('.', ','))).isEqualTo(facts(points));
        assertThat(facts(points.replace(',', '\t'))).isEqualTo(facts(points));
    }
}
