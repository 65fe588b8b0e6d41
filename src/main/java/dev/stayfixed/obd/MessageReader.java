package dev.stayfixed.obd;

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
                Decoded.of("the control unit cleared its codes", new Answer.CodesCleared());
            case Services.REFUSAL -> readRefusal(message);
            case 0x45, 0x48 -> Decoded.of("service $" + Bytes.hex(message.service() - 0x40) + " is not used here");
            default ->
                throw unexpected(
                        message, 0, "service byte " + Bytes.hex(message.service()), "41 to 4A, 54, 59, 62 or 7F");
        };
    }

    private static void requireWhole(Message message) {
        if (!message.isWhole()) {
            throw unexpected(message, message.bytes().size(), "an answer cut short", "the rest: " + message.missing());
        }
    }

    /** Three bytes on CAN; the older protocols repeat the request between service and reason. */
    private static Decoded readRefusal(Message message) {
        List<Integer> bytes = message.bytes();
        if (bytes.size() < 3) {
            throw unexpected(message, bytes.size(), "the end", "7F, the service and the reason");
        }
        boolean older = message.layout() != Message.Layout.CAN && bytes.size() >= 6;
        int reason = older ? bytes.get(5) : bytes.get(2);
        Answer.Refused refused = new Answer.Refused(bytes.get(1), reason);
        return Decoded.of(
                "refused service $%s, reason %s".formatted(Bytes.hex(refused.service()), Bytes.hex(reason)), refused);
    }

    static ObdFormatException unexpected(Message message, int at, String found, String expected) {
        String text = Bytes.hex(message.bytes());
        return new ObdFormatException(text, Math.min(3 * at, text.length()), found, expected);
    }
}
