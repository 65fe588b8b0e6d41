package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import dev.stayfixed.reason.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/** Services $01 and $02, and of service $22 the identifiers F400 to F4FF, which are the same parameters (SAE J1979-2). */
final class ParameterReader {

    private static final int VIN_IDENTIFIER = 0xF190;
    private static final int J1979_VIN_IDENTIFIER = 0xF802;

    private ParameterReader() {}

    static Decoded read(Message message) {
        List<Integer> bytes = message.bytes();
        if (bytes.size() < 3) {
            throw MessageReader.unexpected(message, bytes.size(), ObdFound.END, ObdExpected.PARAMETER_AND_DATA);
        }
        return message.service() == Services.UDS_DATA ? readIdentifier(message) : readParameters(message);
    }

    private static Decoded readIdentifier(Message message) {
        int identifier = Bytes.word(message.bytes(), 1);
        List<Integer> data = message.bytes().subList(3, message.bytes().size());
        if (identifier == VIN_IDENTIFIER || identifier == J1979_VIN_IDENTIFIER) {
            return VehicleInformationReader.vin(message, data);
        }
        int pid = identifier & 0xFF;
        if (identifier >> 8 != 0xF4 || length(pid) == 0 || data.size() < length(pid)) {
            throw MessageReader.unexpected(
                    message,
                    1,
                    Reason.of(ObdFound.IDENTIFIER, Part.verbatim(Bytes.hex(identifier)), Part.count(data.size())),
                    ObdExpected.KNOWN_IDENTIFIER);
        }
        Answer answer = answer(message, 1, pid, data.subList(0, length(pid)));
        return Decoded.of(() -> describe(answer), answer);
    }

    /** On CAN one answer may hold up to six parameters one after the other. */
    private static Decoded readParameters(Message message) {
        List<Answer> answers = new ArrayList<>();
        int headBytes = message.service() == 0x42 ? 2 : 1;
        int at = 1;
        while (at < message.bytes().size() && !isPadding(message, at, answers)) {
            int pid = message.bytes().get(at);
            int dataAt = at + headBytes;
            int end = end(message, pid, dataAt, answers);
            Answer answer = answer(message, at, pid, message.bytes().subList(dataAt, end));
            Answer heard = headBytes == 2 ? frozen(answer, pid, message, dataAt, end) : answer;
            answers.add(heard);
            at = end;
        }
        List<Answer> all = List.copyOf(answers);
        return new Decoded(
                all,
                () -> Shape.EACH.of(all.stream().map(ParameterReader::describe).toList()),
                true);
    }

    /** Where the data of this parameter end; fails where there are too few. */
    private static int end(Message message, int pid, int dataAt, List<Answer> before) {
        int size = message.bytes().size();
        int length = length(pid);
        if (length == 0) {
            if (!before.isEmpty() || dataAt >= size) {
                throw MessageReader.unexpected(
                        message, dataAt - 1, Reason.of(ObdFound.PARAMETER_ID, Part.hex(pid)), ObdExpected.KNOWN_LENGTH);
            }
            return size;
        }
        if (dataAt + length > size) {
            throw MessageReader.unexpected(
                    message,
                    size,
                    Reason.of(ObdFound.END_AFTER, Part.count(Math.max(0, size - dataAt))),
                    Reason.of(ObdExpected.DATA_BYTES, Part.count(length), Part.hex(pid)));
        }
        return dataAt + length;
    }

    private static boolean isPadding(Message message, int at, List<Answer> before) {
        List<Integer> bytes = message.bytes();
        return !before.isEmpty() && !message.lengthKnown() && Bytes.isPadding(bytes.subList(at, bytes.size()));
    }

    /** Data bytes of a parameter, 0 where they are not known. */
    private static int length(int pid) {
        if (isBitmap(pid) || pid == 0x01 || pid == 0x41) {
            return 4;
        }
        return pid == 0x02 || pid == 0x03 ? 2 : Pid.of(pid).map(Pid::length).orElse(0);
    }

    static boolean isBitmap(int id) {
        return id % 0x20 == 0;
    }

    private static Answer answer(Message message, int at, int pid, List<Integer> data) {
        if (isBitmap(pid)) {
            return new Answer.SupportedPids(pid, bitmap(pid, data));
        }
        if (pid == 0x01 || pid == 0x41) {
            int first = pid == 0x01 ? data.get(0) : 0;
            return new Answer.ReadinessReport(
                    Readiness.ofBytes(first, data.get(1), data.get(2), data.get(3)), pid == 0x41);
        }
        if (pid == 0x03) {
            requireFuelSystemStatus(message, at, data);
        }
        return parameter(pid, data);
    }

    private static Answer.Parameter parameter(int pid, List<Integer> data) {
        return Pid.of(pid)
                .map(formula -> new Answer.Parameter(
                        pid, Bytes.hex(data), OptionalDouble.of(formula.value(data)), formula.unit()))
                .orElseGet(() -> new Answer.Parameter(pid, Bytes.hex(data), OptionalDouble.empty(), ""));
    }

    private static void requireFuelSystemStatus(Message message, int at, List<Integer> data) {
        for (int value : data) {
            if (Integer.bitCount(value) > 1 || value > 0x10) {
                throw MessageReader.unexpected(
                        message,
                        at + 1,
                        Reason.of(ObdFound.FUEL_STATUS, Part.verbatim(Bytes.hex(data))),
                        ObdExpected.FUEL_STATUS_BYTES);
            }
        }
    }

    private static Answer frozen(Answer answer, int pid, Message message, int dataAt, int end) {
        if (answer instanceof Answer.SupportedPids supported) {
            return new Answer.SupportedIds(2, pid, supported.pids());
        }
        Answer.Parameter parameter = answer instanceof Answer.Parameter plain
                ? plain
                : parameter(pid, message.bytes().subList(dataAt, end));
        return new Answer.FreezeFrameParameter(message.bytes().get(dataAt - 1), parameter);
    }

    /** Bit 31 of the four bytes is base + 1, bit 0 is base + 32. */
    static Set<Integer> bitmap(int base, List<Integer> bytes) {
        Set<Integer> ids = new TreeSet<>();
        for (int bit = 0; bit < 32; bit++) {
            if ((bytes.get(bit / 8) << bit % 8 & 0x80) != 0) {
                ids.add(base + bit + 1);
            }
        }
        return ids;
    }

    private static Reason describe(Answer answer) {
        if (answer instanceof Answer.FreezeFrameParameter frozen) {
            return Reason.of(LineNote.FREEZE_FRAME, Part.count(frozen.frame()), describe(frozen.parameter()));
        }
        if (answer instanceof Answer.ReadinessReport report) {
            return Reason.of(report.thisCycle() ? LineNote.READINESS_OF_CYCLE : LineNote.READINESS_SINCE_CLEAR);
        }
        if (answer instanceof Answer.Parameter parameter) {
            return describe(parameter);
        }
        return Reason.of(LineNote.SUPPORTED_PARAMETERS);
    }

    private static Reason describe(Answer.Parameter parameter) {
        return Pid.of(parameter.pid())
                .map(formula -> Reason.of(
                        LineNote.PARAMETER,
                        formula.name(),
                        Quantity.exactly(rounded(parameter.value().orElse(0)), Unit.of(parameter.unit()))))
                .orElseGet(() ->
                        Reason.of(LineNote.PARAMETER_BYTES, Part.hex(parameter.pid()), Part.verbatim(parameter.raw())));
    }

    /** Two decimals at most. */
    private static double rounded(double value) {
        return BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP).doubleValue();
    }
}
