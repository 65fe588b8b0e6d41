package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.List;

/**
 * Service $09. On CAN a byte that counts the data items stands behind the infotype; before CAN there is none, the lines having
 * counted themselves.
 */
final class VehicleInformationReader {

    private static final int VIN_LENGTH = 17;

    private VehicleInformationReader() {}

    static Decoded read(Message message) {
        List<Integer> bytes = message.bytes();
        if (bytes.size() < 3) {
            throw MessageReader.unexpected(message, bytes.size(), ObdFound.END, ObdExpected.INFOTYPE_AND_DATA);
        }
        boolean older = message.layout() == Message.Layout.OLDER;
        int infotype = bytes.get(1);
        if (ParameterReader.isBitmap(infotype)) {
            return readBitmap(message, infotype);
        }
        List<Integer> data = bytes.subList(older ? 2 : 3, bytes.size());
        return switch (infotype) {
            case 0x02 -> vin(message, data);
            case 0x08 -> counters(message, Ignition.SPARK, data, older);
            case 0x0B -> counters(message, Ignition.COMPRESSION, data, older);
            default -> Decoded.of(Reason.of(LineNote.INFOTYPE_NOT_USED, Part.hex(infotype)));
        };
    }

    private static Decoded readBitmap(Message message, int base) {
        List<Integer> bytes = message.bytes();
        int from = bytes.size() == 7 ? 3 : 2;
        if (bytes.size() < from + 4) {
            throw MessageReader.unexpected(message, bytes.size(), ObdFound.END, ObdExpected.INFOTYPE_BYTES);
        }
        return Decoded.of(
                Reason.of(LineNote.SUPPORTED_INFOTYPES),
                new Answer.SupportedIds(9, base, ParameterReader.bitmap(base, bytes.subList(from, from + 4))));
    }

    /** The characters of the number, without the 00 or other filling on either side. */
    static Decoded vin(Message message, List<Integer> data) {
        int from = 0;
        while (from < data.size() && data.get(from) == 0) {
            from++;
        }
        List<Integer> characters = data.subList(from, data.size());
        List<Integer> rest = characters.subList(Math.min(VIN_LENGTH, characters.size()), characters.size());
        if (characters.size() < VIN_LENGTH || !Bytes.isPadding(rest)) {
            throw MessageReader.unexpected(
                    message,
                    message.bytes().size() - characters.size(),
                    Reason.of(ObdFound.CHARACTER_COUNT, Part.count(characters.size())),
                    ObdExpected.VIN_LENGTH);
        }
        StringBuilder text = new StringBuilder();
        characters.subList(0, VIN_LENGTH).forEach(value -> text.append((char) value.intValue()));
        Vin vin = Vin.parse(text.toString());
        return Decoded.of(
                Reason.of(LineNote.VEHICLE_NUMBER, Part.verbatim(vin.text())), new Answer.VehicleIdentification(vin));
    }

    /** Count and length must agree: 2n + 1 bytes on CAN. */
    private static Decoded counters(Message message, Ignition ignition, List<Integer> data, boolean older) {
        int count = older ? data.size() / 2 : message.bytes().get(2);
        int most = InUseCounters.names(ignition).size();
        List<Integer> rest = data.subList(Math.min(2 * count, data.size()), data.size());
        boolean fits = data.size() >= 2 * count && (message.lengthKnown() ? rest.isEmpty() : Bytes.isPadding(rest));
        if (!fits || count < 1 || count > most) {
            throw MessageReader.unexpected(
                    message,
                    2,
                    Reason.of(ObdFound.COUNT_BEFORE, Part.count(count), Part.count(data.size())),
                    Reason.of(ObdExpected.COUNTERS, Part.count(most)));
        }
        List<Integer> values = new ArrayList<>();
        for (int at = 0; at < 2 * count; at += 2) {
            values.add(Bytes.word(data, at));
        }
        return Decoded.of(
                Reason.of(LineNote.IN_USE_COUNTERS, Part.count(count)),
                new Answer.InUse(InUseCounters.inOrder(ignition, values)));
    }
}
