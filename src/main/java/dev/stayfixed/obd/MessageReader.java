package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.List;

/** Hands a whole message to the reader of its service. */
final class MessageReader {

    private MessageReader() {}

    /** Fails with a position in the hexadecimal text of the whole message, as {@link Bytes#hex} writes it. */
    static Decoded read(Message message, Requests requests) {
        return switch (message.service()) {
            case 0x43, 0x47, 0x4A -> CodeListReader.read(message);
            case Services.UDS_CODES -> UdsCodesReader.read(message, requests);
            default -> {
                requireWhole(message);
                yield readWhole(message);
            }
        };
    }

    private static Decoded readWhole(Message message) {
        return switch (message.service()) {
            case 0x41, 0x42, Services.UDS_DATA -> ParameterReader.read(message);
            case 0x46 -> TestResultReader.read(message);
            case 0x49 -> VehicleInformationReader.read(message);
            case Services.CLEARED, Services.UDS_CLEARED ->
                Decoded.of(Reason.of(LineNote.UNIT_CLEARED_CODES), new Answer.CodesCleared());
            case Services.REFUSAL -> readRefusal(message);
            case 0x45, 0x48 -> Decoded.of(Reason.of(LineNote.SERVICE_NOT_USED, Part.hex(message.service() - 0x40)));
            default ->
                throw unexpected(
                        message, 0, Reason.of(ObdFound.SERVICE_BYTE, Part.hex(message.service())), ObdExpected.SERVICE);
        };
    }

    private static void requireWhole(Message message) {
        if (message.missing().isPresent()) {
            throw unexpected(
                    message,
                    message.bytes().size(),
                    ObdFound.ANSWER_CUT_SHORT,
                    Reason.of(ObdExpected.REST, message.missing().get()));
        }
    }

    /** Three bytes on CAN; the older protocols repeat the request between service and reason. */
    private static Decoded readRefusal(Message message) {
        List<Integer> bytes = message.bytes();
        if (bytes.size() < 3) {
            throw unexpected(message, bytes.size(), ObdFound.END, ObdExpected.REFUSAL);
        }
        boolean older = message.layout() != Message.Layout.CAN && bytes.size() >= 6;
        int reason = older ? bytes.get(5) : bytes.get(2);
        Answer.Refused refused = new Answer.Refused(bytes.get(1), reason);
        return Decoded.of(Reason.of(LineNote.SERVICE_REFUSED, Part.hex(refused.service()), Part.hex(reason)), refused);
    }

    static ObdFormatException unexpected(Message message, int at, Part found, Part expected) {
        String text = Bytes.hex(message.bytes());
        return new ObdFormatException(text, Math.min(3 * at, text.length()), found, expected);
    }
}
