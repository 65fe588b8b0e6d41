package dev.stayfixed.recording;

import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.English;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What looks like a signal, a unit or a clock and is none, or may be none: it is asked about, never taken in silence. */
class ResemblanceTest {

    private static final LogReader READER = new LogReader(LogLimits.USUAL);

    private static ByteArrayInputStream bytes(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }

    private static Proposal propose(String log) throws IOException {
        return READER.propose(bytes(log));
    }

    private static Optional<ColumnProposal> of(String header, Signal signal, String... values) throws IOException {
        StringBuilder log = new StringBuilder("Time (s),\"" + header + "\",Battery voltage [V]\n");
        for (int i = 0; i < values.length; i++) {
            log.append(i).append(',').append(values[i]).append(",14\n");
        }
        return propose(log.toString()).columns().stream()
                .filter(c -> c.header().startsWith(header))
                .filter(c -> c.mapping().filter(m -> m.signal() == signal).isPresent())
                .findFirst();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Average speed (km/h)",
                "Avg speed [km/h]",
                "Speed avg km/h",
                "Trip average speed [km/h]",
                "Target speed (km/h)",
                "Speed setpoint (km/h)",
                "Cruise control set speed (km/h)",
                "Desired speed (km/h)",
                "Maximum speed (km/h)",
                "Max. speed (km/h)",
                "Vehicle speed max (km/h)",
                "Speed limit (km/h)",
                "Wind speed (km/h)",
                "Head wind speed (km/h)",
                "Idle speed (km/h)",
                "Wheel speed FL (km/h)",
                "Speed (GPS) (km/h)",
                "GPS speed (km/h)",
                "Speed difference (km/h)",
                "Vehicle speed x10 (km/h)",
                "Durchschnittsgeschwindigkeit [km/h]",
                "Höchstgeschwindigkeit [km/h]",
                "Windgeschwindigkeit [km/h]",
                "Vitesse moyenne (km/h)",
                "Velocidad media (km/h)",
                "Velocità massima (km/h)",
                "Gemiddelde snelheid (km/h)",
                "Velocidade média (km/h)",
                "Średnia prędkość (km/h)",
                "Speed of the other car (km/h)",
                "Vehicle speed (knots)",
                "Vehicle speed [kn]",
                "Vehicle speed (furlongs)",
                "Vehicle speed (V)",
                "Turbo speed (km/h)"
            })
    void what_only_resembles_the_vehicle_speed_is_never_certain(String header) throws IOException {
        assertThat(of(header, Signal.VEHICLE_SPEED, "10", "50", "90")
                        .map(ColumnProposal::byHeader)
                        .orElse(Confidence.NONE))
                .isIn(Confidence.GUESS, Confidence.NONE);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "RPM x1000",
                "Engine RPM (x1000)",
                "Engine RPM [x1000 rpm]",
                "RPM/1000",
                "Engine speed [1000/min]",
                "Desired RPM (rpm)",
                "Target engine speed (rpm)",
                "Idle RPM setpoint (rpm)",
                "Commanded engine speed (rpm)",
                "Max RPM (rpm)",
                "Turbine RPM (rpm)",
                "Solldrehzahl [1/min]",
                "Leerlaufdrehzahl [1/min]",
                "Régime moteur maxi (tr/min)",
                "Engine speed (rad/s)",
                "Input shaft rpm (rpm)"
            })
    void what_only_resembles_the_engine_speed_is_never_certain(String header) throws IOException {
        assertThat(of(header, Signal.ENGINE_SPEED, "900", "1500", "2500")
                        .map(ColumnProposal::byHeader)
                        .orElse(Confidence.NONE))
                .isIn(Confidence.GUESS, Confidence.NONE);
    }

    @ParameterizedTest
    @CsvSource({
        "Max coolant temp (°C), COOLANT",
        "Coolant temp setpoint (°C), COOLANT",
        "Coolant temp 2 (°C), COOLANT",
        "Coolant temp (°Re), COOLANT",
        "Charge air temp (°C), INTAKE_AIR",
        "01-0D [kn], VEHICLE_SPEED",
        "01-0D (V), VEHICLE_SPEED",
        "01-05 (setpoint), COOLANT",
        "Vehicle.Speed [knots], VEHICLE_SPEED",
        "Accelerator pedal position E (%), PEDAL",
        "Throttle position B (%), THROTTLE",
        "Commanded throttle (%), THROTTLE",
    })
    void neither_is_any_other_signal_nor_a_published_name_with_an_unknown_unit(String header, Signal signal)
            throws IOException {
        assertThat(of(header, signal, "10", "50", "90")
                        .map(ColumnProposal::byHeader)
                        .orElse(Confidence.NONE))
                .isIn(Confidence.GUESS, Confidence.NONE);
    }

    @ParameterizedTest
    @CsvSource({
        "Vehicle Speed (km/h), VEHICLE_SPEED",
        "Speed (OBD)(km/h), VEHICLE_SPEED",
        "Vehicle Speed Sensor [mph], VEHICLE_SPEED",
        "Engine RPM(rpm), ENGINE_SPEED",
        "Motor-Drehzahl (U/min), ENGINE_SPEED",
        "Engine Coolant Temperature(°C), COOLANT",
        "01-0D (Vehicle Speed), VEHICLE_SPEED",
        "Umgebungstemperatur (°C), AMBIENT",
        "Température air admission (°C), INTAKE_AIR",
        "Temperatura esterna (°C), AMBIENT",
        "Carga del motor (%), LOAD",
        "Obciążenie silnika (%), LOAD",
        "Brandstofniveau (%), FUEL_LEVEL",
        "Poziom paliwa (%), FUEL_LEVEL",
        "Motorlaufzeit (s), RUN_TIME",
    })
    void what_says_name_and_unit_plainly_stays_certain(String header, Signal signal) throws IOException {
        String[] values = signal == Signal.ENGINE_SPEED ? new String[] {"800", "900"} : new String[] {"20", "21"};
        assertThat(of(header, signal, values))
                .hasValueSatisfying(
                        c -> assertThat(c.byHeader()).as(words(c.reason())).isEqualTo(Confidence.CERTAIN));
    }

    @ParameterizedTest
    @CsvSource({
        "Coolant temp (°C), COOLANT, '70,120,150,188,190,190', DEGREES_FAHRENHEIT",
        "Coolant temp (°F), COOLANT, '285,300,340,360,361,361', KELVINS",
        "Ambient temp (°C), AMBIENT, '68,68,69,69', DEGREES_FAHRENHEIT",
        "Barometric pressure (kPa), BAROMETER, '29.8,29.9', INCHES_OF_MERCURY",
        "Barometric pressure (kPa), BAROMETER, '1013,1013', HECTOPASCALS",
        "Engine RPM (rpm), ENGINE_SPEED, '0.8,0.9,2.5', THOUSANDS_PER_MINUTE",
    })
    void values_that_contradict_the_unit_make_it_uncertain(
            String header, Signal signal, String values, SourceUnit fitting) throws IOException {
        ColumnProposal column = of(header, signal, values.split(",", -1)).orElseThrow();
        assertThat(column.byHeader()).isEqualTo(Confidence.GUESS);
        assertThat(column.mapping().orElseThrow().unit()).isEqualTo(fitting);
        assertThat(words(column.reason())).contains("fit " + fitting.spelling());
    }

    /** The open circuit of a sensor reads like this too: the published unit stays, and somebody is asked. */
    @Test
    void a_published_name_keeps_its_unit_whatever_the_values() throws IOException {
        ColumnProposal column = of("01-05", Signal.COOLANT, "215", "215").orElseThrow();
        assertThat(column.byHeader()).isEqualTo(Confidence.GUESS);
        assertThat(column.mapping().orElseThrow().unit()).isEqualTo(SourceUnit.DEGREES_CELSIUS);
        assertThat(words(column.reason())).contains("values up to 215.0 fit °F");
    }

    /** The head of the log is plausible in °C; only its end is not. */
    @Test
    void the_whole_log_is_held_against_the_unit_not_only_its_head() throws IOException {
        StringBuilder log = new StringBuilder("Time (s),Coolant temp (°C),Note\n");
        for (int i = 0; i < 2_000; i++) {
            log.append(i)
                    .append(',')
                    .append(Math.min(190, 60 + i / 15))
                    .append(',')
                    .append("x".repeat(60))
                    .append('\n');
        }
        LogReading reading = READER.readAsProposed(bytes(log.toString()), row -> {});
        assertThat(reading.proposal().byHeaders()).isEqualTo(Confidence.CERTAIN);
        assertThat(reading.report().doubts())
                .extracting(English::words)
                .containsExactly("column \"Coolant temp (°C)\": values up to 190.0 fit °F, not °C");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    12:00:0%d,%d,%d | other than "Elapsed (s)"
                    2024-03-26 07:00:0%d,2000-01-01 00:00:0%d,%d | please say which clock is right
                    """)
    void clocks_that_disagree_are_shown_and_asked_about(String row, String said) throws IOException {
        StringBuilder log = new StringBuilder(
                row.contains("2000") ? "Device time,GPS time,Speed (km/h)\n" : "Clock,Elapsed (s),Speed (km/h)\n");
        for (int i = 0; i < 9; i++) {
            log.append(String.format(Locale.ROOT, row.strip(), i, i * (row.contains("2000") ? 1 : 60), 10))
                    .append('\n');
        }
        Proposal proposal = propose(log.toString());
        assertThat(proposal.time().confidence()).isEqualTo(Confidence.GUESS);
        assertThat(words(proposal.time().reason())).contains(said);
    }

    @Test
    void a_day_that_may_be_a_month_is_asked_about() throws IOException {
        Proposal doubtful = propose("When,01-0D\n03/04/2024 08:00:00,1\n03/04/2024 08:00:01,2\n");
        assertThat(doubtful.time().confidence()).isEqualTo(Confidence.GUESS);
        assertThat(words(doubtful.time().reason())).contains("the day may stand first as well");
        Proposal dayFirst = propose("When,01-0D\n26/03/2024 08:00:00,1\n26/03/2024 08:00:01,2\n");
        assertThat(dayFirst.mapping().timeFormat()).isEqualTo(TimeFormat.DAY_FIRST_LOCAL);
        assertThat(dayFirst.time().confidence()).isEqualTo(Confidence.CERTAIN);
        Proposal overMidnight = propose("When,01-0D\n03/04/2024 23:59:59,1\n04/04/2024 00:00:00,2\n");
        assertThat(overMidnight.mapping().timeFormat()).isEqualTo(TimeFormat.DAY_FIRST_LOCAL);
    }

    private static LogReport read(String log, List<SignalRow> rows) throws IOException {
        return READER.readAsProposed(bytes(log), rows::add).report();
    }

    private static String drive(Map<Integer, String> instead) {
        StringBuilder log = new StringBuilder("Time (s),01-0C,01-0D,01-05\n");
        for (int i = 0; i < 60; i++) {
            log.append(instead.getOrDefault(i, i + ",2000,50," + (60 + i / 10))).append('\n');
        }
        return log.toString();
    }

    @ParameterizedTest
    @CsvSource({
        "'30,2000,999,63', VEHICLE_SPEED, IMPLAUSIBLE_VALUE",
        "'30,2000,50,215', COOLANT, IMPLAUSIBLE_VALUE",
        "'30,2000,0,63', VEHICLE_SPEED, STRAY_VALUE",
        "'30,2000,250,63', VEHICLE_SPEED, STRAY_VALUE",
        "'30,2000,50,-40', COOLANT, STRAY_VALUE",
        "'0,2000,50,-40', COOLANT, STRAY_VALUE",
        "'0,2000,255,60', VEHICLE_SPEED, STRAY_VALUE",
        "'59,2000,x,65', VEHICLE_SPEED, UNREADABLE_VALUE",
    })
    void one_bad_sample_is_dropped_and_said(String row, Signal signal, NoteKind kind) throws IOException {
        List<SignalRow> rows = new ArrayList<>();
        int at = Integer.parseInt(row.substring(0, row.indexOf(',')));
        LogReport report = read(drive(Map.of(at, row)), rows);
        assertThat(report.isScorable()).isTrue();
        assertThat(rows).hasSize(60);
        assertThat(rows.get(at).value(signal)).isEmpty();
        assertThat(report.notes()).extracting(Note::kind).containsExactly(kind);
        assertThat(report.notes().get(0).total()).isEqualTo(1);
    }

    @Test
    void one_bad_time_costs_its_row_only() throws IOException {
        List<SignalRow> rows = new ArrayList<>();
        LogReport report = read(drive(Map.of(30, "900000,2000,50,63")), rows);
        assertThat(report.isScorable()).isTrue();
        assertThat(rows).hasSize(59);
        assertThat(report.notes()).extracting(Note::kind).containsExactly(NoteKind.STRAY_TIME);
    }

    @Test
    void a_real_step_and_a_broken_sensor_are_no_strays() throws IOException {
        List<SignalRow> rows = new ArrayList<>();
        StringBuilder log = new StringBuilder("Time (s),01-0C,01-0D\n");
        for (int i = 0; i < 60; i++) {
            log.append(i).append(",2000,").append(i < 30 ? 0 : 90).append('\n');
        }
        assertThat(read(log.toString(), rows).notes()).isEmpty();
        assertThat(rows)
                .allSatisfy(row -> assertThat(row.value(Signal.VEHICLE_SPEED)).isPresent());
        assertThat(read(log.toString().replace(",90\n", ",999\n"), new ArrayList<>())
                        .isScorable())
                .isFalse();
    }

    @Test
    void a_mapping_tells_what_speaks_against_it() throws IOException {
        LogMapping mapping = new LogMapping(
                "Time",
                TimeFormat.CLOCK_SECONDS,
                DecimalMark.POINT,
                List.of(
                        new ColumnMapping("Speed", Signal.VEHICLE_SPEED, SourceUnit.KILOMETRES_PER_HOUR),
                        new ColumnMapping("Water", Signal.COOLANT, SourceUnit.DEGREES_CELSIUS)));
        assertThat(mapping.takenOnTrust()).hasSize(2);
        assertThat(READER.differences(bytes("Time,Speed,Water\n0,10.5,20\n1,11.5,21\n"), mapping))
                .extracting(English::words)
                .isEmpty();
        assertThat(READER.differences(bytes("Time,Speed,Water\n0,60,180\n1,61,190\n"), mapping))
                .extracting(English::words)
                .containsExactly("column \"Water\": values up to 190.0 fit °F, confirmed was °C");
        assertThat(READER.differences(bytes("Time,Speed,Water\ns,mph,°C\n0,60,80\n1,61,80\n"), mapping))
                .extracting(English::words)
                .containsExactly("column \"Speed [mph]\": the unit is mph, confirmed was km/h");
        assertThat(READER.differences(bytes("Time,Speed,Water\n0,60 mph,80\n1,61 mph,80\n"), mapping))
                .extracting(English::words)
                .contains("column \"Speed [mph]\": the unit is mph, confirmed was km/h");
        assertThat(READER.differences(bytes("Time;Speed;Water\n0;60,5;80\n1;61,5;80\n"), mapping))
                .extracting(English::words)
                .contains("numbers are written with a decimal comma, confirmed was a decimal point");
        assertThat(READER.differences(bytes("Time,Speed,Water\n0,60,80\n500,61,80\n1000,61,80\n"), mapping))
                .extracting(English::words)
                .containsExactly(
                        "column \"Time\": its steps fit milliseconds since the log or the engine started, confirmed was"
                                + " seconds since the log or the engine started");
        assertThat(READER.differences(bytes("Time,Speed,Water\n08:00:00,60,80\n08:00:01,61,80\n"), mapping))
                .extracting(English::words)
                .containsExactly("column \"Time\": \"08:00:00\" is no seconds since the log or the engine started");
    }

    /** A pattern that looks back from each bracket would need hours for this; a pass over it needs none. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "(",
                "[",
                "(]",
                "[)",
                "\"",
                " ",
                "( ",
                "coolant ",
                "km ",
                "distance traveled ",
                "°",
                "A1",
                "1,",
                "-"
            })
    void headers_and_cells_of_any_text_are_read_in_linear_time(String piece) {
        String text = piece.repeat(1_000_000 / piece.length());
        Assertions.assertTimeoutPreemptively(Duration.ofSeconds(30), () -> {
            HeaderText header = HeaderText.of(text);
            assertThat(header.words().length()).isLessThanOrEqualTo(2 * HeaderText.LONGEST);
            CommonWords.named(header);
            PidNames.named(text);
            VssNames.named(text);
            UnitsRow.isOne(List.of(text, text), List.of(text, text));
            Glued.unit(text);
            for (DecimalMark mark : DecimalMark.values()) {
                mark.parse(text);
                for (TimeFormat format : TimeFormat.values()) {
                    format.millis(text, mark);
                }
            }
            for (SourceUnit unit : SourceUnit.values()) {
                CellReader.number(text, unit, mark());
            }
            String sixtyKilobytes = piece.repeat(60_000 / piece.length());
            for (String log : List.of(
                    "Time," + sixtyKilobytes + "\n0,1\n1,2\n",
                    (piece.repeat(Math.max(1, 3_000 / piece.length())) + ";").repeat(20) + "Time\n",
                    "Time,01-0D\n0," + sixtyKilobytes + "\n1,2\n")) {
                try {
                    READER.readAsProposed(bytes(log), row -> {});
                } catch (LogFormatException refused) {
                    assertThat(words(refused.reason())).contains("expected");
                }
            }
        });
    }

    private static DecimalMark mark() {
        return DecimalMark.POINT;
    }
}
