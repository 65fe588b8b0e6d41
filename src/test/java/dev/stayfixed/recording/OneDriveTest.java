package dev.stayfixed.recording;

import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.signal.Extent;
import dev.stayfixed.drive.signal.MotionTimes;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalFacts;
import dev.stayfixed.drive.signal.SignalMeter;
import dev.stayfixed.drive.signal.SignalRules;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * One drive of ten rows, written by hand in many layouts: whatever the layout, its facts are these. Running and counted 0 to 9 s, idle
 * 0 to 2 s, no time at 25 mph.
 */
class OneDriveTest {

    private static final MotionTimes TIMES = new MotionTimes(9_000, 0, 2_000, OptionalLong.empty(), 2_000);
    private static final Map<Signal, Extent> EXTENTS = Map.of(
            Signal.ENGINE_SPEED, new Extent(800, 2500, 800, 2500, 10),
            Signal.VEHICLE_SPEED, new Extent(0, 36, 0, 36, 10),
            Signal.COOLANT, new Extent(20, 24.5, 20, 24.5, 10));

    private final SignalMeter meter = SignalFacts.meter(SignalRules.EXACT, OptionalDouble.empty());

    private LogReading read(byte[] log) throws IOException {
        return new LogReader(LogLimits.USUAL).readAsProposed(new ByteArrayInputStream(log), meter);
    }

    private static byte[] file(String name) throws IOException {
        try (InputStream in =
                Objects.requireNonNull(OneDriveTest.class.getResourceAsStream("/recording/one-drive/" + name), name)) {
            return in.readAllBytes();
        }
    }

    private void isThatDrive(LogReading reading) {
        assertThat(reading.proposal().byHeaders())
                .as(reading.proposal().toString())
                .isEqualTo(Confidence.CERTAIN);
        assertThat(reading.report().isScorable()).isTrue();
        assertThat(reading.report().rows()).isEqualTo(10);
        assertThat(reading.report().doubts()).isEmpty();
        assertThat(meter.facts().times()).isEqualTo(TIMES);
        assertThat(meter.facts().extents()).isEqualTo(EXTENTS);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "units-row",
                "tall",
                "tall-pids",
                "glued",
                "cut-up",
                "us-dates",
                "date-and-time-apart",
                "named-month",
                "german",
                "french",
                "spanish",
                "italian",
                "dutch",
                "portuguese",
                "polish",
                "three-clocks",
                "resembling",
                "short-rows"
            })
    void the_layout_does_not_matter(String name) throws IOException {
        isThatDrive(read(file(name + ".csv")));
    }

    @Test
    void what_only_resembles_is_shown_with_its_reason() throws IOException {
        LogReading reading = read(file("resembling.csv"));
        assertThat(reading.proposal().columns())
                .filteredOn(column -> column.mapping().isEmpty())
                .extracting(column -> words(column.reason()))
                .containsExactly(
                        "named like vehicle speed, but \"average\" makes it another quantity",
                        "the header names no signal that we use",
                        "named like vehicle speed, but \"wind\" makes it another quantity",
                        "named like coolant temperature, but \"max\" makes it another quantity");
    }

    @Test
    void a_clock_that_stands_still_does_not_win_and_all_clocks_are_shown() throws IOException {
        Proposal proposal = read(file("three-clocks.csv")).proposal();
        assertThat(proposal.mapping().timeColumn()).isEqualTo("GPS Time");
        assertThat(words(proposal.time().reason()))
                .contains("goes along with \"Time (s)\"; stands still: \"Session start\"");
    }

    /** In the order of the zip file; the second piece has its columns in another order. */
    @Test
    void the_pieces_of_one_drive_in_a_zip_file_are_one_drive() throws IOException {
        String[] lines = new String(file("short-rows.csv"), StandardCharsets.UTF_8).split("\n", -1);
        StringBuilder second = new StringBuilder("Vehicle speed (km/h),Time (s),Engine RPM (rpm),Coolant temp (°C)\n");
        for (int i = 5; i < 11; i++) {
            String[] cells = lines[i].split(",", -1);
            second.append(cells[2] + "," + cells[0] + "," + cells[1] + "," + cells[3] + "\n");
        }
        StringBuilder first = new StringBuilder();
        for (int i = 0; i < 5; i++) {
            first.append(lines[i]).append('\n');
        }
        LogReading reading = read(zip(first.toString(), second.toString()));
        isThatDrive(reading);
        assertThat(reading.report().notes()).extracting(Note::kind).contains(NoteKind.NEXT_PART);
    }

    private static byte[] zip(String... parts) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (int i = 0; i < parts.length; i++) {
                out.putNextEntry(new ZipEntry("part" + i + ".csv"));
                out.write(parts[i].getBytes(StandardCharsets.UTF_8));
            }
        }
        return bytes.toByteArray();
    }
}
