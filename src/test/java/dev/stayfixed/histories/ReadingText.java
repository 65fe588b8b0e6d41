package dev.stayfixed.histories;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/** Writes a reading as a scan tool shows it: 11-bit CAN frames with identifiers (ISO 15765-2), or joined answers without. */
final class ReadingText {

    /** Groups that this engine has: catalyst, evaporative system, oxygen sensor, its heater, EGR. */
    private static final int SUPPORTED = 0xE5;

    private static final int COUNTERS_OF_SPARK = 20;

    private final Watched fault;
    private final boolean headers;
    private final List<String> lines = new ArrayList<>();
    private String asked = "";

    private ReadingText(Watched fault, boolean headers) {
        this.fault = fault;
        this.headers = headers;
    }

    static String of(Watched fault, Reading reading) {
        ReadingText text = new ReadingText(fault, reading.headers());
        reading.answers().forEach(text::write);
        return String.join("\n", text.lines) + "\n";
    }

    private void write(Answer answer) {
        if (answer instanceof Answer.Codes c) {
            ask("%02X".formatted(c.listing().service));
            send(c.unit(), codes(c), c.extent());
        } else if (answer instanceof Answer.SinceClear s) {
            ask("01 01");
            send(s.unit(), sinceClear(s), Answer.Extent.WHOLE);
        } else if (answer instanceof Answer.ThisCycle t) {
            ask("01 41");
            send(t.unit(), thisCycle(t), Answer.Extent.WHOLE);
        } else if (answer instanceof Answer.Statuses s) {
            ask(s.subfunction() == 0x02 ? "19 02 FF" : "19 0A");
            send(s.unit(), statuses(s), s.extent());
        } else if (answer instanceof Answer.Counter c) {
            ask("01 %02X".formatted(c.pid()));
            send(c.unit(), counter(c), Answer.Extent.WHOLE);
        } else if (answer instanceof Answer.InUse i) {
            ask("09 08");
            send(i.unit(), inUse(i), Answer.Extent.WHOLE);
        } else if (answer instanceof Answer.TestValue t) {
            ask("06 %02X".formatted(fault.monitorId()));
            send(
                    t.unit(),
                    join(bytes(0x46, fault.monitorId(), 0x80, 0x01), words(t.value(), t.min(), t.max())),
                    Answer.Extent.WHOLE);
        } else if (answer instanceof Answer.Vin v) {
            ask("09 02");
            send(v.unit(), join(bytes(0x49, 0x02, 0x01), v.number().chars().toArray()), Answer.Extent.WHOLE);
        } else if (answer instanceof Answer.Cleared c) {
            ask(c.service() == 0x44 ? "04" : "14 FF FF FF");
            send(c.unit(), bytes(c.service()), Answer.Extent.WHOLE);
        } else if (answer instanceof Answer.NoData n) {
            ask(n.request());
            lines.add("NO DATA");
        }
    }

    /** Without headers the request is echoed; with them only the one that a later answer cannot be understood without. */
    private void ask(String request) {
        if ((headers && !request.startsWith("19 02")) || request.equals(asked)) {
            return;
        }
        asked = request;
        lines.add(headers ? "7E0 03 " + request + " 00 00 00 00" : ">" + request);
    }

    private static int[] codes(Answer.Codes answer) {
        List<Integer> bytes = new ArrayList<>(
                List.of(0x40 + answer.listing().service, answer.codes().size()));
        for (String code : new TreeSet<>(answer.codes())) {
            bytes.add(Watched.value(code) >> 8);
            bytes.add(Watched.value(code) & 0xFF);
        }
        return ints(bytes);
    }

    private int[] sinceClear(Answer.SinceClear answer) {
        int a = (answer.lamp() ? 0x80 : 0) | answer.count();
        if (!answer.unit().equals(Watched.ENGINE)) {
            return bytes(0x41, 0x01, a, 0x04, 0x00, 0x00);
        }
        int others = SUPPORTED & ~mine();
        int incomplete = (answer.others() ? 0 : others) | (answer.bit() == Answer.Bit.INCOMPLETE ? mine() : 0);
        return bytes(0x41, 0x01, a, 0x07, SUPPORTED, incomplete);
    }

    /** The other groups have not run: one that is complete before the start would show a cycle under way. */
    private int[] thisCycle(Answer.ThisCycle answer) {
        if (!answer.unit().equals(Watched.ENGINE)) {
            return bytes(0x41, 0x41, 0x00, 0x04, 0x00, 0x00);
        }
        int others = SUPPORTED & ~mine();
        int supported = answer.bit() == Answer.Bit.NOT_SUPPORTED ? others : SUPPORTED;
        int incomplete = answer.bit() == Answer.Bit.INCOMPLETE ? SUPPORTED : others;
        return bytes(0x41, 0x41, 0x00, 0x07, supported, incomplete);
    }

    private int mine() {
        return fault.groupBit() < 0 ? 0 : 1 << fault.groupBit();
    }

    private static int[] statuses(Answer.Statuses answer) {
        List<Integer> bytes = new ArrayList<>(List.of(0x59, answer.subfunction(), 0xFF));
        for (Map.Entry<String, Integer> entry : new TreeMap<>(answer.bytes()).entrySet()) {
            int code = Watched.value(entry.getKey());
            bytes.addAll(List.of(code >> 8, code & 0xFF, 0x00, entry.getValue()));
        }
        return ints(bytes);
    }

    private static int[] counter(Answer.Counter counter) {
        int v = counter.value();
        return switch (counter.pid()) {
            case 0x30 -> bytes(0x41, 0x30, v);
            case 0xA6 -> bytes(0x41, 0xA6, v >>> 24, v >> 16 & 0xFF, v >> 8 & 0xFF, v & 0xFF);
            case 0x0C -> join(bytes(0x41, 0x0C), words(v * 4));
            default -> join(bytes(0x41, counter.pid()), words(v));
        };
    }

    private int[] inUse(Answer.InUse answer) {
        int[] counts = new int[COUNTERS_OF_SPARK];
        counts[0] = answer.ignitionCycles() / 2;
        counts[1] = answer.ignitionCycles();
        if (fault.numerator() >= 0) {
            counts[fault.numerator()] = answer.numerator();
            counts[fault.numerator() + 1] = answer.ignitionCycles() / 2;
        }
        return join(bytes(0x49, 0x08, COUNTERS_OF_SPARK), words(counts));
    }

    private void send(String unit, int[] bytes, Answer.Extent extent) {
        int[] sent = extent == Answer.Extent.CUT ? Arrays.copyOf(bytes, bytes[0] == 0x59 ? 2 : 1) : bytes;
        String mark = extent == Answer.Extent.ERROR_MARK ? " <RX ERROR" : "";
        if (!headers) {
            lines.add(
                    hex(extent == Answer.Extent.PADDED ? Arrays.copyOf(sent, Math.max(7, sent.length)) : sent) + mark);
        } else if (extent == Answer.Extent.CUT) {
            lines.add(unit + " " + hex(join(bytes(bytes.length & 0xFF), sent)));
        } else if (bytes.length <= 7) {
            frame(unit, join(bytes(bytes.length), bytes), mark);
        } else {
            frame(unit, join(bytes(0x10 | bytes.length >> 8, bytes.length & 0xFF), Arrays.copyOf(bytes, 6)), "");
            int sequence = 1;
            for (int at = 6; at < bytes.length; at += 7) {
                int[] part = Arrays.copyOfRange(bytes, at, Math.min(bytes.length, at + 7));
                frame(unit, join(bytes(0x20 | (sequence++ & 0xF)), part), at + 7 >= bytes.length ? mark : "");
            }
        }
    }

    private void frame(String unit, int[] bytes, String mark) {
        lines.add(unit + " " + hex(Arrays.copyOf(bytes, 8)) + mark);
    }

    private static String hex(int[] bytes) {
        StringBuilder text = new StringBuilder();
        for (int b : bytes) {
            text.append(text.isEmpty() ? "" : " ").append("%02X".formatted(b));
        }
        return text.toString();
    }

    private static int[] bytes(int... bytes) {
        return bytes;
    }

    private static int[] words(int... values) {
        int[] bytes = new int[2 * values.length];
        for (int i = 0; i < values.length; i++) {
            bytes[2 * i] = values[i] >> 8 & 0xFF;
            bytes[2 * i + 1] = values[i] & 0xFF;
        }
        return bytes;
    }

    private static int[] ints(List<Integer> list) {
        return list.stream().mapToInt(Integer::intValue).toArray();
    }

    private static int[] join(int[] first, int[] second) {
        int[] all = Arrays.copyOf(first, first.length + second.length);
        System.arraycopy(second, 0, all, first.length, second.length);
        return all;
    }
}
