package dev.stayfixed.recording;

import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.Count;
import dev.stayfixed.drive.signal.SignalFacts;
import dev.stayfixed.drive.signal.SignalMeter;
import dev.stayfixed.drive.signal.SignalRules;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Whatever comes in, a log comes out as rows and a report, or is refused in the one way. 10,000 inputs a seed where CI=true, 3,000
 * elsewhere; {@code -Dstayfixed.fuzz-logs=50000} asks for more.
 */
@Tag("fuzz")
class LogReaderFuzzTest {

    private static final int INPUTS = Count.of("stayfixed.fuzz-logs", 3_000, 10_000);
    private static final String[] BITS = {
        "Time",
        "time_utc",
        ",",
        ",",
        ";",
        "\t",
        "\n",
        "\n",
        "\r\n",
        "\"",
        "01-0C",
        "010D",
        "Speed [km/h]",
        "Coolant Â°C",
        "10:00:00",
        "10:00:01.5",
        "23:59:59",
        "2019-05-26T20:26:31Z",
        "1700000000",
        "1700000000000",
        "-1",
        "0",
        "800",
        "36,5",
        "1e999",
        "NaN",
        "Infinity",
        "0x1p3",
        "99999999999999999999",
        "-0.0",
        "\uFEFF",
        "#",
        " ",
        "°",
        "\u0000",
        "\uD800",
        "on",
        "00076504",
        "Vehicle.TraveledDistance",
        "(",
        "]",
        "24:00:00",
        "9999-12-31T23:59:59Z",
        "MIL",
        "€",
        "|"
    };

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4})
    void only_the_one_failure_comes_out(long seed) throws IOException {
        Random random = new Random(seed);
        int read = 0;
        for (int i = 0; i < INPUTS; i++) {
            byte[] input = input(random);
            try {
                read += isRead(input) ? 1 : 0;
            } catch (RuntimeException unexpected) {
                throw new AssertionError("input " + i + ": " + Arrays.toString(input), unexpected);
            }
        }
        assertThat(read).as("inputs that could be read").isBetween(INPUTS / 50, INPUTS - INPUTS / 50);
    }

    private static boolean isRead(byte[] input) throws IOException {
        SignalMeter meter = SignalFacts.meter(SignalRules.EXACT, OptionalDouble.empty());
        try {
            LogReading reading = new LogReader(LogLimits.USUAL).readAsProposed(new ByteArrayInputStream(input), meter);
            assertThat(LogText.lines(reading.report())).isNotEmpty();
            assertThat(reading.report().rows()).isEqualTo(meter.facts().rows().rows());
            assertThat(meter.facts().summary()).isNotNull();
            return true;
        } catch (LogFormatException refused) {
            assertThat(words(refused.reason())).contains("found ", ", expected ");
            return false;
        }
    }

    private static byte[] input(Random random) throws IOException {
        byte[] plain =
                text(random).getBytes(random.nextInt(20) == 0 ? StandardCharsets.UTF_16LE : StandardCharsets.UTF_8);
        byte[] packed = switch (random.nextInt(8)) {
            case 0 -> gzip(plain);
            case 1 -> zip(plain);
            default -> plain;
        };
        if (packed.length > 0 && random.nextInt(4) == 0) {
            packed[random.nextInt(packed.length)] ^= (byte) (1 << random.nextInt(8));
        }
        return random.nextInt(4) == 0 ? Arrays.copyOf(packed, random.nextInt(packed.length + 1)) : packed;
    }

    private static String text(Random random) {
        StringBuilder text = new StringBuilder();
        if (random.nextInt(3) > 0) {
            text.append("Time,01-0C,01-0D\n10:00:00,800,0\n10:00:01,900,36\n10:00:02,950,40\n10:00:03,950,40\n");
        }
        int bits = random.nextInt(40);
        for (int i = 0; i < bits; i++) {
            int at = random.nextInt(3) == 0 ? text.length() : random.nextInt(text.length() + 1);
            text.insert(at, BITS[random.nextInt(BITS.length)]);
        }
        return text.toString();
    }

    private static byte[] gzip(byte[] plain) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(bytes)) {
            out.write(plain);
        }
        return bytes.toByteArray();
    }

    private static byte[] zip(byte[] plain) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(bytes)) {
            out.putNextEntry(new ZipEntry("drive.csv"));
            out.write(plain);
        }
        return bytes.toByteArray();
    }
}
