package dev.stayfixed.bench;

import static dev.stayfixed.English.words;

import com.github.pires.obd.commands.ObdCommand;
import com.github.pires.obd.commands.SpeedCommand;
import com.github.pires.obd.commands.control.DistanceMILOnCommand;
import com.github.pires.obd.commands.control.DistanceSinceCCCommand;
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
import dev.stayfixed.obd.Pid;
import dev.stayfixed.obd.Scan;
import java.io.ByteArrayInputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;

/** The answers of 18 parameters decoded, and the value of each looked up, beside a published library. */
final class ScanCosts {

    private static final int THEIRS = 1_000;
    private static final int OURS = 10_000;

    /** A parameter, the library's reader of it, and an answer. */
    private record Asked(int pid, ObdCommand command, String line) {}

    private ScanCosts() {}

    static void run() throws Exception {
        Random random = new Random(7);
        List<Asked> asked = List.of(
                asked(0x04, new LoadCommand(), random),
                asked(0x05, new EngineCoolantTemperatureCommand(), random),
                asked(0x06, new FuelTrimCommand(), random),
                asked(0x0A, new FuelPressureCommand(), random),
                asked(0x0B, new IntakeManifoldPressureCommand(), random),
                asked(0x0C, new RPMCommand(), random),
                asked(0x0D, new SpeedCommand(), random),
                asked(0x0F, new AirIntakeTemperatureCommand(), random),
                asked(0x10, new MassAirFlowCommand(), random),
                asked(0x11, new ThrottlePositionCommand(), random),
                asked(0x1F, new RuntimeCommand(), random),
                asked(0x21, new DistanceMILOnCommand(), random),
                asked(0x2F, new FuelLevelCommand(), random),
                asked(0x31, new DistanceSinceCCCommand(), random),
                asked(0x33, new BarometricPressureCommand(), random),
                asked(0x46, new AmbientAirTemperatureCommand(), random),
                asked(0x5C, new OilTempCommand(), random),
                asked(0x5E, new ConsumptionRateCommand(), random));
        String paste = String.join("\n", asked.stream().map(Asked::line).toList());
        String headed = String.join(
                "\n",
                asked.stream()
                        .map(one -> "7E8 0%d %s".formatted((one.line().length() + 1) / 3, one.line()))
                        .toList());
        new Rounds("18 parameters decoded and looked up", 15)
                .with("obd-java-api", THEIRS, () -> theirs(asked))
                .with("a scan", OURS, () -> ours(paste, asked))
                .with("a scan with headers", OURS, () -> ours(headed, asked))
                .with(
                        "a scan with what became of each line",
                        OURS,
                        () -> ours(paste, asked)
                                + Scan.read(paste).lines().stream()
                                        .mapToInt(line ->
                                                words(line.explanation()).length())
                                        .sum())
                .run();
    }

    private static Asked asked(int pid, ObdCommand command, Random random) {
        command.setResponseTimeDelay(0L);
        StringBuilder line = new StringBuilder("41 %02X".formatted(pid));
        for (int at = 0; at < Pid.of(pid).orElseThrow().length(); at++) {
            line.append(" %02X".formatted(random.nextInt(256)));
        }
        return new Asked(pid, command, line.toString());
    }

    private static double theirs(List<Asked> asked) throws Exception {
        double sum = 0;
        for (Asked one : asked) {
            byte[] bytes = (one.line() + "\r>").getBytes(StandardCharsets.US_ASCII);
            one.command().run(new ByteArrayInputStream(bytes), OutputStream.nullOutputStream());
            sum += one.command().getCalculatedResult().length();
        }
        return sum;
    }

    private static double ours(String paste, List<Asked> asked) {
        Scan scan = Scan.read(paste);
        double sum = 0;
        for (Asked one : asked) {
            sum += scan.parameter(one.pid()).orElseThrow();
        }
        return sum;
    }
}
