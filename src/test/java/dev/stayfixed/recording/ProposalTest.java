package dev.stayfixed.recording;

import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.signal.Signal;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ProposalTest {

    private static Proposal propose(String text) throws IOException {
        return new LogReader(LogLimits.USUAL).propose(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
    }

    private static ColumnProposal column(String header, String... values) throws IOException {
        StringBuilder log = new StringBuilder("Time," + header + ",Engine RPM\n");
        for (int i = 0; i < values.length; i++) {
            log.append("10:00:0").append(i).append(',').append(values[i]).append(",800\n");
        }
        return propose(log.toString()).columns().get(0);
    }

    /** Names as COVESA VSS 4.0 to 6.0 and SAE J1979 print them, and words that loggers use (common practice, no source). */
    @ParameterizedTest
    @CsvSource({
        "01-0C, ENGINE_SPEED, REVOLUTIONS_PER_MINUTE, CERTAIN",
        "010C, ENGINE_SPEED, REVOLUTIONS_PER_MINUTE, CERTAIN",
        "01 0c, ENGINE_SPEED, REVOLUTIONS_PER_MINUTE, CERTAIN",
        "$01 $0C, ENGINE_SPEED, REVOLUTIONS_PER_MINUTE, CERTAIN",
        "0x010C, ENGINE_SPEED, REVOLUTIONS_PER_MINUTE, CERTAIN",
        "01-05, COOLANT, DEGREES_CELSIUS, CERTAIN",
        "01-05 [°F], COOLANT, DEGREES_FAHRENHEIT, CERTAIN",
        "Vehicle.OBD.AmbientAirTemperature, AMBIENT, DEGREES_CELSIUS, CERTAIN",
        "Vehicle.Powertrain.CombustionEngine.ECT, COOLANT, DEGREES_CELSIUS, CERTAIN",
        "Vehicle.Powertrain.CombustionEngine.EngineCoolant.Temperature, COOLANT, DEGREES_CELSIUS, CERTAIN",
        "Engine Coolant Temperature [Â°C], COOLANT, DEGREES_CELSIUS, CERTAIN",
        "Coolant temp (°F), COOLANT, DEGREES_FAHRENHEIT, CERTAIN",
        "speed_mph, VEHICLE_SPEED, MILES_PER_HOUR, CERTAIN",
        "VehicleSpeed(m/s), VEHICLE_SPEED, METRES_PER_SECOND, CERTAIN",
        "Vehicle speed, VEHICLE_SPEED, KILOMETRES_PER_HOUR, GUESS",
        "GPS Speed [km/h], VEHICLE_SPEED, KILOMETRES_PER_HOUR, GUESS",
        "Throttle, THROTTLE, PER_CENT, LIKELY",
        "Barometric Pressure (inHg), BAROMETER, INCHES_OF_MERCURY, CERTAIN",
        "Battery voltage [V], MODULE_VOLTAGE, VOLTS, CERTAIN",
        "Ambient air temp, AMBIENT, DEGREES_CELSIUS, GUESS",
        "Intake Air Temperature [K], INTAKE_AIR, DEGREES_CELSIUS, GUESS",
        "Fuel level [%], FUEL_LEVEL, PER_CENT, CERTAIN",
        "Short term fuel trim bank 2 [%], SHORT_TRIM_2, PER_CENT, CERTAIN",
        "LTFT1 [%], LONG_TRIM, PER_CENT, CERTAIN",
        "Distance since codes cleared [km], DISTANCE_SINCE_CLEAR, KILOMETRES, CERTAIN",
        "Warm-ups since clear, WARM_UPS_SINCE_CLEAR, COUNT, LIKELY",
        "Absolute load [%], ABSOLUTE_LOAD, PER_CENT, CERTAIN",
        "Calculated engine load [%], LOAD, PER_CENT, CERTAIN",
    })
    void a_header_names_a_signal(String header, Signal signal, SourceUnit unit, Confidence confidence)
            throws IOException {
        ColumnProposal proposal = signal == Signal.ENGINE_SPEED
                ? propose("Time," + header + "\n10:00:00,20\n10:00:01,21\n")
                        .columns()
                        .get(0)
                : column(header, "20", "21");
        assertThat(proposal.mapping()).contains(new ColumnMapping(HeaderText.clean(header), signal, unit));
        assertThat(proposal.confidence()).isEqualTo(confidence);
        assertThat(words(proposal.reason())).isNotBlank();
    }

    @ParameterizedTest
    @CsvSource({
        "Lambda sensor voltage, the header names no signal that we use",
        "Transmission oil temp, the header names no signal that we use",
        "notes, the header names no signal that we use",
        "01-1C, the header names no signal that we use",
        "Coolant temp source, 'named like coolant temperature, but \"x\" is no value of it'",
        "Trip distance [km], 'named like distance in this drive, but it does not only grow'",
    })
    void a_column_that_is_not_used_says_why(String header, String reason) throws IOException {
        String[] values = header.startsWith("Trip") ? new String[] {"3", "2"} : new String[] {"x", "y"};
        ColumnProposal unused = column(header, values);
        assertThat(unused.mapping()).isEmpty();
        assertThat(words(unused.reason())).isEqualTo(reason);
    }

    @Test
    void of_columns_that_compete_for_a_signal_none_is_certain_and_all_are_shown() throws IOException {
        Proposal proposal = propose("Time,GPS speed (km/h),Speed (km/h),Speed (km/h)\n10:00:00,1,2,3\n");
        assertThat(proposal.mapping().columns())
                .containsExactly(
                        new ColumnMapping("Speed (km/h)", Signal.VEHICLE_SPEED, SourceUnit.KILOMETRES_PER_HOUR));
        assertThat(proposal.byHeaders()).isEqualTo(Confidence.GUESS);
        assertThat(proposal.columns())
                .extracting(column -> words(column.reason()))
                .containsExactly(
                        "column \"Speed (km/h)\" already gives the same signal; here the header says vehicle speed; but it is"
                                + " not known what \"gps\" changes: please say",
                        "the header says vehicle speed in km/h; but \"GPS speed (km/h)\", \"Speed (km/h)\" may be it as well:"
                                + " please say which",
                        "column \"Speed (km/h)\" already gives the same signal; here the header says vehicle speed in km/h");
    }

    @Test
    void temperatures_without_a_unit_are_read_by_their_values() throws IOException {
        assertThat(column("Coolant temp", "68", "195").mapping().orElseThrow().unit())
                .isEqualTo(SourceUnit.DEGREES_FAHRENHEIT);
        assertThat(words(column("Coolant temp", "20", "95").reason()))
                .isEqualTo("the header says coolant temperature, no unit; °C assumed");
        assertThat(words(column("Coolant temp [°C]", "20", "400").reason()))
                .isEqualTo("the header says coolant temperature in °C; but 1 of 2 values are out of its range");
    }

    /** Kilometres in COVESA VSS 4.0 and 5.1, metres in 6.0, under the same name. */
    @Test
    void the_travelled_distance_is_read_by_its_values_and_neighbours() throws IOException {
        String name = "Vehicle.TraveledDistance";
        assertThat(column(name, "84211.5", "84211.6").mapping().orElseThrow().unit())
                .isEqualTo(SourceUnit.KILOMETRES);
        assertThat(column(name, "84211500", "84211514").mapping().orElseThrow().unit())
                .isEqualTo(SourceUnit.METRES);
        assertThat(column(name, "500", "514").mapping().orElseThrow().unit()).isEqualTo(SourceUnit.METRES);
        ColumnProposal doubtful = column(name, "84211", "84211");
        assertThat(doubtful.confidence()).isEqualTo(Confidence.GUESS);
        assertThat(words(doubtful.reason())).contains("please say which");
        String older = "Time,Vehicle.Powertrain.CombustionEngine.ECT," + name + "\n10:00:00,80,500\n10:00:01,80,514\n";
        assertThat(words(propose(older).columns().get(1).reason()))
                .isEqualTo("km: other names are older than version 6");
        assertThat(column(name + " [m]", "84211", "84211").confidence()).isEqualTo(Confidence.CERTAIN);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Time|08:19:47.605|08:19:47.696|TIME_OF_DAY|CERTAIN",
                "Time|8:19:47 AM|8:19:48 AM|TIME_OF_DAY|CERTAIN",
                "time_utc|2019-05-26T20:26:31Z|2019-05-26T20:26:32Z|ISO_WITH_OFFSET|CERTAIN",
                "when|2019-05-26 20:26:31.5+02:00|2019-05-26 20:26:32+02:00|ISO_WITH_OFFSET|CERTAIN",
                "when|2019-05-26 20:26:31|2019-05-26 20:26:32|ISO_LOCAL|CERTAIN",
                "Datum|26.05.2019 20:26:31|26.05.2019 20:26:32,5|DOTTED_LOCAL|CERTAIN",
                "t|1558902391|1558902392|EPOCH_SECONDS|CERTAIN",
                "x|1558902391000|1558902392000|EPOCH_MILLIS|LIKELY",
                "Time (sec)|0|0.5|CLOCK_SECONDS|CERTAIN",
                "elapsed [ms]|0|500|CLOCK_MILLIS|CERTAIN",
                "Time [min]|0|0.5|CLOCK_MINUTES|CERTAIN",
                "Time|0|0.5|CLOCK_SECONDS|GUESS",
                "Time|0|500|CLOCK_MILLIS|GUESS",
                "01-1F|5|6|CLOCK_SECONDS|CERTAIN",
            })
    void the_time_column_is_found_by_header_and_values(String line) throws IOException {
        List<String> parts = List.of(line.split("\\|", -1));
        Proposal proposal =
                propose("Engine RPM;" + parts.get(0) + "\n800;" + parts.get(1) + "\n801;" + parts.get(2) + "\n");
        assertThat(proposal.mapping().timeColumn()).isEqualTo(parts.get(0));
        assertThat(proposal.mapping().timeFormat()).isEqualTo(TimeFormat.valueOf(parts.get(3)));
        assertThat(proposal.time().confidence()).isEqualTo(Confidence.valueOf(parts.get(4)));
    }

    @Test
    void a_clock_of_the_logger_goes_before_that_of_a_satellite_receiver_and_of_the_engine() throws IOException {
        assertThat(propose("GPS Time,Device Time,RPM\n10:00:00,11:00:00,800\n")
                        .mapping()
                        .timeColumn())
                .isEqualTo("Device Time");
        assertThat(propose("01-1F,Time (s),RPM\n5,0,800\n6,1,800\n").mapping().timeColumn())
                .isEqualTo("Time (s)");
    }

    @Test
    void a_column_without_values_at_the_beginning_is_proposed_less_surely() throws IOException {
        ColumnProposal blank = column("Coolant [°C]", "", "-");
        assertThat(blank.confidence()).isEqualTo(Confidence.LIKELY);
        assertThat(words(blank.reason())).endsWith("; no values at the beginning of the log");
    }
}
