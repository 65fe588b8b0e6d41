package dev.stayfixed.obd;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.github.pires.obd.commands.ObdCommand;
import com.github.pires.obd.commands.SpeedCommand;
import com.github.pires.obd.commands.control.DistanceMILOnCommand;
import com.github.pires.obd.commands.control.DistanceSinceCCCommand;
import com.github.pires.obd.commands.control.TroubleCodesCommand;
import com.github.pires.obd.commands.engine.LoadCommand;
import com.github.pires.obd.commands.engine.MassAirFlowCommand;
import com.github.pires.obd.commands.engine.OilTempCommand;
import com.github.pires.obd.commands.engine.RPMCommand;
import com.github.pires.obd.commands.engine.RuntimeCommand;
import com.github.pires.obd.commands.engine.ThrottlePositionCommand;
import com.github.pires.obd.commands.fuel.ConsumptionRateCommand;
import com.github.pires.obd.commands.fuel.FuelLevelCommand;
import com.github.pires.obd.commands.fuel.FuelTrimCommand;
import com.github.pires.obd.commands.pressure.BarometricPressureCommand;
import com.github.pires.obd.commands.pressure.FuelPressureCommand;
import com.github.pires.obd.commands.pressure.IntakeManifoldPressureCommand;
import com.github.pires.obd.commands.temperature.AirIntakeTemperatureCommand;
import com.github.pires.obd.commands.temperature.AmbientAirTemperatureCommand;
import com.github.pires.obd.commands.temperature.EngineCoolantTemperatureCommand;
import de.kyrychenko.utils.vin.VinValidatorUtils;
import java.io.ByteArrayInputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The same input to two published libraries: vin-utils for check digits, obd-java-api for parameters and codes. Seeded. */
class SecondOpinionTest {

    private static final String VIN_CHARACTERS = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ";

    /**
     * Left out by name, because the library is known to be wrong: $42 module voltage, $43 absolute load and $44 equivalence ratio divide
     * whole numbers, and $0E timing advance is shown as a percentage. Engine speed ($0C) is compared after the library's cut to whole revolutions.
     */
    private static final Map<Integer, Supplier<ObdCommand>> COMMANDS = Map.ofEntries(
            Map.entry(0x04, LoadCommand::new),
            Map.entry(0x05, EngineCoolantTemperatureCommand::new),
            Map.entry(0x06, FuelTrimCommand::new),
            Map.entry(0x0A, FuelPressureCommand::new),
            Map.entry(0x0B, IntakeManifoldPressureCommand::new),
            Map.entry(0x0C, RPMCommand::new),
            Map.entry(0x0D, SpeedCommand::new),
            Map.entry(0x0F, AirIntakeTemperatureCommand::new),
            Map.entry(0x10, MassAirFlowCommand::new),
            Map.entry(0x11, ThrottlePositionCommand::new),
            Map.entry(0x1F, RuntimeCommand::new),
            Map.entry(0x21, DistanceMILOnCommand::new),
            Map.entry(0x2F, FuelLevelCommand::new),
            Map.entry(0x31, DistanceSinceCCCommand::new),
            Map.entry(0x33, BarometricPressureCommand::new),
            Map.entry(0x46, AmbientAirTemperatureCommand::new),
            Map.entry(0x5C, OilTempCommand::new),
            Map.entry(0x5E, ConsumptionRateCommand::new));

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void checkDigitsAgree(long seed) {
        Random random = new Random(seed);
        int valid = 0;
        for (int run = 0; run < 5_000; run++) {
            StringBuilder text = new StringBuilder();
            for (int place = 0; place < 17; place++) {
                text.append(VIN_CHARACTERS.charAt(random.nextInt(VIN_CHARACTERS.length())));
            }
            text.setCharAt(8, "0123456789X".charAt(random.nextInt(11)));
            boolean theirs = VinValidatorUtils.isValidVin(text.toString());
            boolean ours = Vin.parse(text.toString()).warning().isEmpty();
            assertEquals(theirs, ours, () -> "seed " + seed + ", " + text);
            valid += ours ? 1 : 0;
        }
        assertTrue(valid > 200, "too few valid numbers to prove anything: " + valid);
    }

    @Test
    void parametersAgree() throws Exception {
        Random random = new Random(20240607);
        int compared = 0;
        for (Map.Entry<Integer, Supplier<ObdCommand>> entry : COMMANDS.entrySet()) {
            for (int run = 0; run < 300; run++) {
                compare(entry.getKey(), entry.getValue().get(), random);
                compared++;
            }
        }
        assertEquals(5_400, compared);
    }

    private static void compare(int pid, ObdCommand command, Random random) throws Exception {
        int length = Pid.of(pid).orElseThrow().length();
        StringBuilder line = new StringBuilder("41 " + Bytes.hex(pid));
        for (int at = 0; at < length; at++) {
            line.append(' ').append(Bytes.hex(random.nextInt(256)));
        }
        answer(command, line.toString());
        double ours = Scan.read(line.toString()).parameter(pid).orElseThrow();
        double theirs = Double.parseDouble(command.getCalculatedResult().replace(',', '.'));
        if (pid == 0x0C) {
            ours = Math.floor(ours);
        }
        double tolerance = Math.max(1e-4 * Math.abs(ours), 1e-4);
        assertEquals(theirs, ours, tolerance, line.toString());
    }

    /** The library reads a stream that ends with the adapter's prompt, and waits before it does: its waiting is set to nothing. */
    private static void answer(ObdCommand command, String line) throws Exception {
        command.setResponseTimeDelay(0L);
        byte[] bytes = (line + "\r>").getBytes(StandardCharsets.US_ASCII);
        command.run(new ByteArrayInputStream(bytes), OutputStream.nullOutputStream());
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void codesOfTheOlderLayoutAgree(long seed) throws Exception {
        Random random = new Random(seed);
        for (int run = 0; run < 500; run++) {
            StringBuilder line = new StringBuilder("43");
            for (int at = 0; at < 3; at++) {
                line.append(String.format(" %02X %02X", random.nextInt(256), 1 + random.nextInt(255)));
            }
            TroubleCodesCommand theirs = new TroubleCodesCommand();
            answer(theirs, line.toString());
            String ours = Scan.read(line.toString()).heard().stream()
                    .flatMap(heard -> ((Answer.CodeList) heard.answer()).codes().stream())
                    .map(TroubleCode::text)
                    .collect(Collectors.joining("\n"));
            assertEquals(theirs.getFormattedResult().strip(), ours, () -> "seed " + seed + ", " + line);
        }
    }
}
