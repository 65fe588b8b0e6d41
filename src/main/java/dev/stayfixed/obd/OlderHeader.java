package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.List;
import java.util.Optional;

/**
 * The three header bytes and the checksum of the protocols before CAN: SAE J1850 and ISO 9141-2 ("48 6B 10", "41 6B 10") and ISO
 * 14230-4 ("86 F1 10"). From memory; a line is read only when its checksum agrees.
 */
final class OlderHeader {

    private static final int HEADER_BYTES = 3;

    private OlderHeader() {}

    /** Empty where the line has no such header. Fails on a checksum that does not agree. */
    static Optional<LineContent> read(String line, List<Integer> bytes) {
        if (bytes.size() < HEADER_BYTES + 2) {
            return Optional.empty();
        }
        List<Integer> header = bytes.subList(0, HEADER_BYTES);
        List<Integer> data = bytes.subList(HEADER_BYTES, bytes.size() - 1);
        if (isAsking(header) && Services.isRequest(data.get(0))) {
            return Optional.of(new LineContent.Request(data));
        }
        if (!isAnswering(header) || !Services.isAnswer(data.get(0))) {
            return Optional.empty();
        }
        int checksum = bytes.get(bytes.size() - 1);
        List<Integer> covered = bytes.subList(0, bytes.size() - 1);
        if (checksum != sum(covered) && checksum != crc(covered)) {
            throw new ObdFormatException(
                    line,
                    Math.max(0, line.stripTrailing().length() - 2),
                    Reason.of(ObdFound.CHECKSUM, Part.hex(checksum)),
                    Reason.of(ObdExpected.CHECKSUMS, Part.hex(sum(covered)), Part.hex(crc(covered))));
        }
        String unit = Bytes.hex(header).replace(" ", "");
        return Optional.of(new LineContent.Whole(unit, data, Message.Layout.OLDER, true));
    }

    private static boolean isAnswering(List<Integer> header) {
        boolean functional = (header.get(0) == 0x48 || header.get(0) == 0x41) && header.get(1) == 0x6B;
        return functional || (isKeyword(header) && header.get(1) == 0xF1);
    }

    private static boolean isAsking(List<Integer> header) {
        boolean functional = (header.get(0) == 0x68 || header.get(0) == 0x61) && header.get(1) == 0x6A;
        return functional || (isKeyword(header) && header.get(2) == 0xF1);
    }

    /** ISO 14230: bit 7 says that addresses follow, the low six bits count the data. */
    private static boolean isKeyword(List<Integer> header) {
        return header.get(0) >= 0x80;
    }

    private static int sum(List<Integer> bytes) {
        return bytes.stream().mapToInt(Integer::intValue).sum() & 0xFF;
    }

    /** SAE J1850: polynomial 0x1D, start and final inversion 0xFF. */
    private static int crc(List<Integer> bytes) {
        int crc = 0xFF;
        for (int value : bytes) {
            crc ^= value;
            for (int bit = 0; bit < 8; bit++) {
                crc = (crc & 0x80) != 0 ? (crc << 1 ^ 0x1D) & 0xFF : crc << 1;
            }
        }
        return crc ^ 0xFF;
    }
}
