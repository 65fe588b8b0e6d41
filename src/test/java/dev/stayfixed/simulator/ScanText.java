package dev.stayfixed.simulator;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** Writes answers as lines of text. */
final class ScanText {

    private final Layout layout;
    private final List<String> lines = new ArrayList<>();

    ScanText(Layout layout) {
        this.layout = layout;
    }

    String write(List<Message> messages) {
        String asked = "";
        for (Message message : messages) {
            if (layout == Layout.HEADERLESS && !message.request().equals(asked)) {
                lines.add(">" + message.request());
                asked = message.request();
            } else if (message.request().startsWith("19 02")) {
                statusRequest(message.request());
            }
            write(message);
        }
        return String.join("\n", lines) + "\n";
    }

    /** A log of the bus shows the request too; without it the reader cannot tell by which mask the codes were listed. */
    private void statusRequest(String request) {
        int[] asked = Arrays.stream(request.split(" "))
                .mapToInt(digits -> Integer.parseInt(digits, 16))
                .toArray();
        int[] framed = Arrays.copyOf(join(new int[] {asked.length}, asked), 8);
        switch (layout) {
            case CAN_HEADERS -> lines.add("7E0 " + hex(framed));
            case CAN_HEADERS_CLOSE -> lines.add(("7E0" + hex(framed)).replace(" ", ""));
            case CAN_29_HEADERS -> lines.add("18 DA 10 F1 " + hex(framed));
            default -> {
                // No request is shown.
            }
        }
    }

    private void write(Message message) {
        if (layout.isOlder()) {
            older(message);
        } else if (layout == Layout.HEADERLESS || layout == Layout.HEADERLESS_CLOSE) {
            lines.add(hex(message.bytes()));
        } else if (message.bytes().length <= 7) {
            frame(message.unit(), join(new int[] {message.bytes().length}, message.bytes()));
        } else {
            frames(message);
        }
    }

    /** ISO 15765-2: first frame with twelve bits of length, consecutive frames numbered from 1, modulo 16. */
    private void frames(Message message) {
        int[] bytes = message.bytes();
        frame(
                message.unit(),
                join(new int[] {0x10 | (bytes.length >> 8), bytes.length & 0xFF}, Arrays.copyOf(bytes, 6)));
        int sequence = 1;
        for (int at = 6; at < bytes.length; at += 7) {
            int[] part = Arrays.copyOfRange(bytes, at, Math.min(bytes.length, at + 7));
            frame(message.unit(), join(new int[] {0x20 | (sequence++ & 0xF)}, part));
        }
    }

    private void frame(int unit, int[] bytes) {
        String header = layout == Layout.CAN_29_HEADERS ? "18 DA F1 1" + (unit == 0 ? "0" : "8") : "7E" + (8 + unit);
        int[] filled = Arrays.copyOf(bytes, 8);
        if (layout == Layout.CAN_29_HEADERS) {
            Arrays.fill(filled, bytes.length, 8, 0xAA);
        }
        String line = header + " " + hex(filled);
        lines.add(layout == Layout.CAN_HEADERS_CLOSE ? line.replace(" ", "") : line);
    }

    private void older(Message message) {
        int[] bytes = message.bytes();
        switch (bytes[0]) {
            case 0x43, 0x47 -> olderCodes(message);
            case 0x49 -> olderVin(message);
            case 0x41, 0x42 -> {
                if (bytes.length <= 7) {
                    olderLine(message.unit(), bytes);
                }
            }
            default -> {
                // Test results, permanent codes and status bytes have no older layout here.
            }
        }
    }

    /** Three codes a message, filled with 00 00, no count byte. */
    private void olderCodes(Message message) {
        int[] codes = Arrays.copyOfRange(message.bytes(), 2, message.bytes().length);
        int at = 0;
        do {
            int[] six = Arrays.copyOf(Arrays.copyOfRange(codes, at, Math.min(codes.length, at + 6)), 6);
            olderLine(message.unit(), join(new int[] {message.bytes()[0]}, six));
            at += 6;
        } while (at < codes.length);
    }

    /** Five messages of four characters, the first filled with 00. */
    private void olderVin(Message message) {
        if (message.bytes()[1] != 0x02) {
            return;
        }
        int[] filled = join(new int[3], Arrays.copyOfRange(message.bytes(), 3, message.bytes().length));
        for (int i = 0; i < 5; i++) {
            int[] four = Arrays.copyOfRange(filled, 4 * i, 4 * i + 4);
            olderLine(message.unit(), join(new int[] {0x49, 0x02, i + 1}, four));
        }
    }

    private void olderLine(int unit, int[] bytes) {
        if (layout == Layout.OLDER_HEADERLESS) {
            lines.add(hex(bytes));
            return;
        }
        int[] headed = join(new int[] {0x48, 0x6B, unit == 0 ? 0x10 : 0x18}, bytes);
        lines.add(hex(join(headed, new int[] {Arrays.stream(headed).sum() & 0xFF})));
    }

    private String hex(int[] bytes) {
        String separator = layout == Layout.HEADERLESS_CLOSE ? "" : " ";
        return Arrays.stream(bytes).mapToObj("%02X"::formatted).collect(Collectors.joining(separator));
    }

    private static int[] join(int[] first, int[] second) {
        int[] all = Arrays.copyOf(first, first.length + second.length);
        System.arraycopy(second, 0, all, first.length, second.length);
        return all;
    }
}
