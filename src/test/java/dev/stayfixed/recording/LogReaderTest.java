package dev.stayfixed.recording;

import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import dev.stayfixed.English;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LogReaderTest {

    private static final String LOG = "Time,01-0C,01-0D\n10:00:00,800,0\n10:00:01,900,36\n";
    private static final LogMapping MAPPING = new LogMapping(
            "Time",
            TimeFormat.TIME_OF_DAY,
            DecimalMark.POINT,
            List.of(
                    new ColumnMapping("01-0C", Signal.ENGINE_SPEED, SourceUnit.REVOLUTIONS_PER_MINUTE),
                    new ColumnMapping("01-0D", Signal.VEHICLE_SPEED, SourceUnit.KILOMETRES_PER_HOUR)));

    private final List<SignalRow> rows = new ArrayList<>();

    private LogReport read(byte[] log) throws IOException {
        return new LogReader(LogLimits.USUAL)
                .readAsProposed(new ByteArrayInputStream(log), rows::add)
                .report();
    }

    private LogReport read(String log) throws IOException {
        return read(log.getBytes(StandardCharsets.UTF_8));
    }

    private LogFormatException refused(byte[] log) {
        return catchThrowableOfType(LogFormatException.class, () -> read(log));
    }

    private LogFormatException refused(String log) {
        return refused(log.getBytes(StandardCharsets.UTF_8));
    }

    private static byte[] gzip(byte[] plain) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(bytes)) {
            out.write(plain);
        }
        return bytes.toByteArray();
    }

    private static byte[] zip(String... namesAndTexts) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (int i = 0; i < namesAndTexts.length; i += 2) {
                out.putNextEntry(new ZipEntry(namesAndTexts[i]));
                out.write(namesAndTexts[i + 1].getBytes(StandardCharsets.UTF_8));
            }
        }
        return bytes.toByteArray();
    }

    private void assertRead() {
        assertThat(rows)
                .containsExactly(
                        new SignalRow(36_000_000, Map.of(Signal.ENGINE_SPEED, 800.0, Signal.VEHICLE_SPEED, 0.0)),
                        new SignalRow(36_001_000, Map.of(Signal.ENGINE_SPEED, 900.0, Signal.VEHICLE_SPEED, 36.0)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void all_line_ends_are_read(String end) throws IOException {
        read(LOG.replace("\n", end));
        assertRead();
    }

    @Test
    void separators_quotes_blank_lines_and_a_byte_order_mark_do_no_harm() throws IOException {
        for (String log : List.of(
                LOG.replace(',', ';'),
                LOG.replace(',', '\t'),
                LOG.replace(',', '|'),
                "\uFEFF" + LOG,
                LOG.replace("800", " \"800\" "),
                LOG.replace("\n", "\n\n"),
                "Logger made by hand\ntoday, in the shop\n\n" + LOG,
                LOG.replace("\n", ",\n"))) {
            rows.clear();
            read(log);
            assertRead();
        }
    }

    @Test
    void packed_logs_are_read() throws IOException {
        byte[] plain = LOG.getBytes(StandardCharsets.UTF_8);
        for (byte[] packed : List.of(
                gzip(plain),
                zip("drive.csv", LOG),
                zip("a/", "", "a/readme.md", "hello", "a/DRIVE.CSV", LOG, "z.png", "x"))) {
            rows.clear();
            read(packed);
            assertRead();
        }
    }

    @Test
    void a_degree_sign_in_latin_1_is_read() throws IOException {
        LogReport report = read("Time,Coolant [°C]\n10:00:00,20\n".getBytes(StandardCharsets.ISO_8859_1));
        assertThat(report.columns().get(0).mapping().header()).isEqualTo("Coolant [°C]");
    }

    @Test
    void a_mapping_that_was_confirmed_is_used_as_it_is() throws IOException {
        LogReport report = new LogReader(LogLimits.USUAL)
                .read(
                        new ByteArrayInputStream(LOG.replace("01-0D", "Extra").getBytes(StandardCharsets.UTF_8)),
                        MAPPING,
                        rows::add);
        assertThat(rows.get(1).values()).isEqualTo(Map.of(Signal.ENGINE_SPEED, 900.0));
        assertThat(LogText.lines(report))
                .containsExactly(
                        "2 rows from 10:00:00 to 10:00:01",
                        "01-0C: engine speed in rpm, 2 values, 0 blank, 0 unreadable, 0 implausible",
                        "Extra: not used",
                        "01-0D: expected, not in this file");
    }

    @Test
    void what_was_dropped_is_counted_with_the_first_places() throws IOException {
        StringBuilder log = new StringBuilder("Time,Engine RPM [rpm],note\n");
        log.append(
                "Time,Engine RPM [rpm],note\n10:00:00,800,a\nnoon,800,a\n,800,a\n10:00:02,8OO,a\n10:00:03,,a\n10:00:04,1,5,a\n");
        for (int i = 0; i < 9; i++) {
            log.append("10:00:05,800\n");
        }
        log.append("10:00:06,");
        LogReport report = read(log.toString());
        assertThat(report.rows()).isEqualTo(13);
        assertThat(report.notes())
                .extracting(LogText::line)
                .containsExactly(
                        "1 × header again, skipped: line 2: \"Time\"",
                        "10 × cells missing at the end of the row, taken as blank: line 9: \"10:00:05,800\"; line 10:"
                                + " \"10:00:05,800\"; line 11: \"10:00:05,800\"; line 12: \"10:00:05,800\"; line 13:"
                                + " \"10:00:05,800\"; and 5 more",
                        "1 × more cells than the header has, row dropped (a decimal comma without quotes?): line 8:"
                                + " \"10:00:04,1,5,a\"",
                        "1 × time cannot be read, row dropped: line 4, Time: \"noon\"",
                        "1 × no time, row dropped: line 5, Time: \"\"",
                        "8 × the time of the row before again: values taken, no time added: line 10: \"10:00:05\"; line 11:"
                                + " \"10:00:05\"; line 12: \"10:00:05\"; line 13: \"10:00:05\"; line 14: \"10:00:05\"; and 3 more",
                        "1 × value cannot be read, taken as blank: line 6, Engine RPM [rpm]: \"8OO\"");
        assertThat(report.unused()).containsExactly("note");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            10:00:01,400,20|vehicle speed: 1 values outside 0 to 300 km/h, the first "400" in line 3
            10:00:01,0,900|coolant temperature: 1 values outside -50 to 150 °C, the first "900" in line 3
            09:58:59,0,20|the time goes back by 61 s; a logger's clock goes back by 60 s at most
            23:00:00,0,20|the time leaps by 13 h between two rows
            10:00:00,0,20|all rows have the same time
            """)
    void a_log_that_cannot_be_a_drive_is_flagged_and_not_scored(String row, String reason) throws IOException {
        LogReport report = read("Time,01-0D,01-05\n10:00:00,0,20\n" + row + "\n");
        assertThat(report.isScorable()).isFalse();
        assertThat(report.implausible()).extracting(English::words).containsExactly(reason);
        assertThat(LogText.lines(report).get(0)).isEqualTo("Not judged: " + reason);
    }

    @Test
    void implausible_values_are_not_handed_on() throws IOException {
        read("Time,01-0D,01-05\n10:00:00,0,20\n10:00:01,400,20\n");
        assertThat(rows.get(1).values()).isEqualTo(Map.of(Signal.COOLANT, 20.0));
    }

    @Test
    void a_log_that_spans_days_or_lost_most_of_its_rows_is_no_drive() throws IOException {
        StringBuilder days = new StringBuilder("Time,01-0D\n");
        for (int i = 0; i < 10; i++) {
            days.append(1_700_000_000L + i * 40_000L).append(",0\n");
        }
        assertThat(read(days.toString()).implausible())
                .extracting(English::words)
                .containsExactly("the log spans 100 h; a drive lasts 96 h at most");
        StringBuilder lost = new StringBuilder("Time,01-0D\n");
        for (int i = 0; i < 20; i++) {
            lost.append("10:00:0").append(i % 10).append(i < 10 ? ",1\n" : "x,1,2\n");
        }
        LogReport report = new LogReader(LogLimits.USUAL)
                .read(
                        new ByteArrayInputStream((lost + "10:00:09,0,0,0\n").getBytes(StandardCharsets.UTF_8)),
                        MAPPING,
                        rows::add);
        assertThat(report.implausible())
                .extracting(English::words)
                .containsExactly("more rows had to be dropped (11) than could be read (10)");
    }

    @Test
    void a_column_that_is_mostly_unreadable_is_flagged() throws IOException {
        String log = "Time,01-0D\n10:00:00,1\n10:00:01,1\n10:00:02,a\n10:00:03,b\n10:00:04,c\n";
        LogReport report = new LogReader(LogLimits.USUAL)
                .read(new ByteArrayInputStream(log.getBytes(StandardCharsets.UTF_8)), MAPPING, rows::add);
        assertThat(report.implausible())
                .extracting(English::words)
                .containsExactly("vehicle speed: 3 of 5 cells cannot be read as km/h");
    }

    @Test
    void readiness_bytes_and_the_lamp_are_read() throws IOException {
        read("Time,01-41,01-01,MIL\n10:00:00,00 07 65 04,8307FF00,on\n10:00:01,xx,00 07,maybe\n");
        assertThat(rows.get(0).values())
                .isEqualTo(Map.of(
                        Signal.CYCLE_READINESS, (double) 0x00076504L,
                        Signal.READINESS, (double) 0x8307FF00L,
                        Signal.MIL, 1.0));
        assertThat(rows.get(1).values()).isEmpty();
    }

    @Test
    void a_log_that_is_none_is_refused_with_what_to_do() throws IOException {
        assertThat(words(refused("").reason())).isEqualTo("found an empty file, expected a CSV log with a header line");
        assertThat(words(refused("hello").reason()))
                .isEqualTo(
                        "line 1: found \"hello\", expected a header line with at least two columns, separated by comma,"
                                + " semicolon, tab or |");
        assertThat(words(refused("Speed,RPM\n1,2\n").reason()))
                .startsWith(
                        "line 1: found no column with a time among \"Speed, RPM\", expected a time column: date and time with"
                                + " offset, 2024-03-01T08:15:00Z; ");
        assertThat(words(refused("Time,colour\n10:00:00,red\n").reason()))
                .isEqualTo(
                        "line 1: found no column with a signal among \"colour\", expected vehicle speed, engine speed, coolant"
                                + " temperature or the like; or a mapping that says which they are");
        for (Charset utf16 : List.of(StandardCharsets.UTF_16, StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE)) {
            assertThat(words(refused(LOG.getBytes(utf16)).reason()))
                    .isEqualTo("found text in UTF-16, expected a CSV log in UTF-8; save it again as CSV (UTF-8)");
        }
        assertThat(words(refused(LOG + "\0").reason()))
                .isEqualTo("found binary data (zero bytes), expected a CSV log in UTF-8");
    }

    @Test
    void damage_says_in_which_line() {
        LogFormatException quote = refused(LOG + "10:00:02,\"800,1\n10:00:03,800,1\n10:00:04,800,1\n");
        assertThat(words(quote.reason()))
                .isEqualTo(
                        "line 4: found a quoted cell that runs over several lines, expected every opened quote closed in the"
                                + " same line");
        assertThat(quote.line()).hasValue(4);
        assertThat(words(quote.found())).isEqualTo("a quoted cell that runs over several lines");
        assertThat(words(quote.expected())).isEqualTo("every opened quote closed in the same line");
        assertThat(words(refused(LOG + "10:00:02," + "8".repeat(5_000) + ",1\n").reason()))
                .isEqualTo(
                        "line 4: found a row that cannot be split into cells, expected at most 500 cells of at most 4096"
                                + " characters, and every opened quote closed");
    }

    @Test
    void a_cut_off_quote_in_the_last_row_costs_that_row_only() throws IOException {
        LogReport report = read(LOG + "10:00:02,\"80\n");
        assertRead();
        assertThat(report.notes()).extracting(Note::kind).containsExactly(NoteKind.BROKEN_QUOTE);
    }

    @Test
    void a_mapping_of_another_log_is_refused() {
        byte[] log = "Zeit;Drehzahl\n10:00:00;800\n".getBytes(StandardCharsets.UTF_8);
        assertThatThrownBy(() -> new LogReader(LogLimits.USUAL).read(new ByteArrayInputStream(log), MAPPING, rows::add))
                .isInstanceOfSatisfying(
                        LogFormatException.class,
                        refused -> assertThat(words(refused.reason()))
                                .isEqualTo(
                                        "line 1: found columns \"Zeit, Drehzahl\", expected the columns of the saved mapping, among them"
                                                + " \"Time\"; propose a new mapping"));
        assertThatThrownBy(() -> new LogReader(LogLimits.USUAL)
                        .read(
                                new ByteArrayInputStream("Time,01-0C\nlater,800\n".getBytes(StandardCharsets.UTF_8)),
                                MAPPING,
                                rows::add))
                .isInstanceOfSatisfying(
                        LogFormatException.class,
                        refused -> assertThat(words(refused.reason()))
                                .isEqualTo(
                                        "line 2: found no row with a readable time in column \"Time\", expected time of day, 08:15:00.250"));
    }

    @Test
    void damaged_and_foreign_archives_are_refused() throws IOException {
        byte[] packed = gzip(LOG.repeat(2_000).getBytes(StandardCharsets.UTF_8));
        assertThat(words(refused(Arrays.copyOf(packed, packed.length / 2)).reason()))
                .isEqualTo(
                        "found compressed data that end in the middle, expected a whole gzip or zip file; send it again");
        assertThat(words(refused(new byte[] {0x1F, (byte) 0x8B, 1}).reason()))
                .isEqualTo("found a damaged gzip header, expected a whole gzip file; send it again");
        assertThat(words(refused(zip("[Content_Types].xml", "<x/>")).reason()))
                .isEqualTo(
                        "found a zip file without a log in it ([Content_Types].xml), expected one .csv, .txt or .tsv file in"
                                + " it; export a spreadsheet as CSV first");
        assertThat(words(refused(zip("a.csv", LOG, "b.csv", LOG)).reason()))
                .isEqualTo(
                        "found a second log in the zip file (b.csv), expected one log in a zip file, or the pieces of one"
                                + " drive in their order, each with the same columns and beginning within 12 h after the end of"
                                + " the one before; send each drive by itself");
        String[] many = new String[200];
        Arrays.setAll(many, i -> i % 2 == 0 ? "file" + i + ".bin" : "x");
        assertThat(words(refused(zip(many)).found())).startsWith("a zip file without a log");
    }

    @Test
    void what_unpacks_too_far_is_refused_before_it_is_read() throws IOException {
        byte[] bomb = gzip((LOG + "10:00:02,800,0\n".repeat(400_000)).getBytes(StandardCharsets.UTF_8));
        assertThat(words(refused(bomb).found()))
                .isEqualTo("compressed data that unpack to more than 300 times their size");
        assertThat(words(refused(zip("drive.csv", LOG + "10:00:02,800,0\n".repeat(400_000)))
                        .found()))
                .isEqualTo("compressed data that unpack to more than 300 times their size");
        assertThat(words(refused(zip("x.bin", "0".repeat(8_000_000), "drive.csv", LOG))
                        .found()))
                .isEqualTo("compressed data that unpack to more than 300 times their size");
        LogLimits small = new LogLimits(100, 300, 500, 4096, 50);
        assertThatThrownBy(() -> new LogReader(small)
                        .readAsProposed(
                                new ByteArrayInputStream(LOG.repeat(9).getBytes(StandardCharsets.UTF_8)), rows::add))
                .isInstanceOfSatisfying(
                        LogFormatException.class,
                        refused -> assertThat(words(refused.reason()))
                                .isEqualTo(
                                        "found more than 100 bytes when unpacked, expected at most 100 bytes; split the log into drives"));
    }

    @Test
    void a_failing_stream_is_not_blamed_on_the_log() {
        InputStream failing = new InputStream() {
            @Override
            public int read() throws IOException {
                throw new IOException("line is dead");
            }

            @Override
            public int read(byte[] buffer, int offset, int length) throws IOException {
                throw new IOException("line is dead");
            }
        };
        assertThatThrownBy(() -> new LogReader(LogLimits.USUAL).propose(failing))
                .isInstanceOf(IOException.class)
                .hasMessage("line is dead");
    }

    @Test
    void mappings_that_make_no_sense_are_refused() {
        assertThatThrownBy(() -> new ColumnMapping("a", Signal.COOLANT, SourceUnit.KILOPASCALS))
                .hasMessage("column \"a\": found unit kPa for coolant temperature, expected a unit like °C");
        assertThatThrownBy(() -> new LogMapping("t", TimeFormat.CLOCK_SECONDS, DecimalMark.POINT, List.of()))
                .hasMessage("columns: found none, expected at least one with a signal");
        ColumnMapping one = new ColumnMapping("a", Signal.COOLANT, SourceUnit.DEGREES_CELSIUS);
        assertThatThrownBy(() -> new LogMapping("t", TimeFormat.CLOCK_SECONDS, DecimalMark.POINT, List.of(one, one)))
                .hasMessage(
                        "column \"a\": found coolant temperature a second time, expected each column and signal once");
    }

    /** Exact by definition: 1 mi = 1609.344 m; 160 °F = 71.11 °C; 29.92 inHg = 101.32 kPa (US Standard Atmosphere 1976). */
    @ParameterizedTest
    @CsvSource({
        "MILES_PER_HOUR, VEHICLE_SPEED, 25, 40.2336",
        "METRES_PER_SECOND, VEHICLE_SPEED, 10, 36",
        "DEGREES_FAHRENHEIT, COOLANT, 160, 71.1111",
        "DEGREES_FAHRENHEIT, AMBIENT, 20, -6.6667",
        "KELVINS, COOLANT, 273.15, 0",
        "INCHES_OF_MERCURY, BAROMETER, 29.92, 101.3208",
        "POUNDS_PER_SQUARE_INCH, MANIFOLD_PRESSURE, 1, 6.8948",
        "HECTOPASCALS, BAROMETER, 1013, 101.3",
        "BARS, MANIFOLD_PRESSURE, 1, 100",
        "INCHES_OF_WATER, EVAP_PRESSURE, 1, 249.0889",
        "FRACTION, THROTTLE, 0.25, 25",
        "MILES, ODOMETER, 200, 321.8688",
        "METRES, ODOMETER, 1500, 1.5",
        "KILOGRAMS_PER_HOUR, AIR_FLOW, 36, 10",
        "POUNDS_PER_MINUTE, AIR_FLOW, 1, 7.5599",
        "HOURS, RUN_TIME, 1, 3600",
        "MILLIVOLTS, MODULE_VOLTAGE, 14106, 14.106",
        "COUNT, WARM_UPS_SINCE_CLEAR, 15, 15",
    })
    void units_are_converted(SourceUnit unit, Signal signal, double value, double expected) {
        assertThat(unit.to(signal).apply(value)).isCloseTo(expected, within(6e-5));
    }

    @ParameterizedTest
    @CsvSource({
        "Date;Time, 2024-02-29;23:59:59.5, 2024-03-01;00:00:00.5, ISO_LOCAL",
        "Time;Date, 23:59:59;29.02.2024, 00:00:00;01.03.2024, DOTTED_LOCAL",
    })
    void aDateInAColumnOfItsOwnIsPutBeforeTheTimeOfDay(String head, String first, String second, TimeFormat format)
            throws IOException {
        String log = (head + ";01-0C\n" + first + ";800\n" + second + ";900\n").replace(';', '\t');
        Proposal proposal =
                new LogReader(LogLimits.USUAL).propose(new ByteArrayInputStream(log.getBytes(StandardCharsets.UTF_8)));
        assertThat(proposal.mapping().timeColumn()).isEqualTo("Time");
        assertThat(proposal.mapping().dateColumn()).contains("Date");
        assertThat(proposal.mapping().timeFormat()).isEqualTo(format);
        LogReport report = read(log);
        assertThat(rows.get(1).millis() - rows.get(0).millis()).isEqualTo(1_000);
        assertThat(report.firstTime()).startsWith("2");
        assertThat(report.unused()).isEmpty();
        assertThat(report.notes()).isEmpty();
    }

    @Test
    void aTimeOfDayBesideWhatIsNoDateStaysATimeOfDay() throws IOException {
        String log = "Date,Time,01-0C\nMonday,10:00:00,800\nMonday,10:00:01,900\n";
        LogReport report = read(log);
        assertThat(report.firstTime()).isEqualTo("10:00:00");
        assertThat(report.unused()).containsExactly("Date");
    }

    @Test
    void theDateStandsInAnotherColumnThanTheTime() {
        assertThatThrownBy(() -> new LogMapping(
                        "Time",
                        java.util.Optional.of(" Time"),
                        TimeFormat.ISO_LOCAL,
                        DecimalMark.POINT,
                        MAPPING.columns()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("date column: found \"Time\", the column of the time, expected another one");
    }

    @Test
    void aColumnForTheDateAsksForATimeWithADate() {
        assertThatThrownBy(() -> new LogMapping(
                        "Time",
                        java.util.Optional.of("Date"),
                        TimeFormat.TIME_OF_DAY,
                        DecimalMark.POINT,
                        MAPPING.columns()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "time format: found \"TIME_OF_DAY\" with a column for the date, expected one" + " with a date");
    }
}
