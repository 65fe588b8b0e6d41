package dev.stayfixed.verification;

import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.TroubleCode;
import java.util.ArrayList;
import java.util.List;

/** Writes the answers of a control unit as a technician would paste them, so that tests go through the real reader. */
final class ScanText {

    private final List<String> lines = new ArrayList<>();

    static ScanText scan() {
        return new ScanText();
    }

    /** Services $07 and $03, both without codes. */
    static ScanText noCodes() {
        return scan().pending().confirmed();
    }

    ScanText pending(String... codes) {
        return list("47", codes);
    }

    ScanText confirmed(String... codes) {
        return list("43", codes);
    }

    ScanText permanent(String... codes) {
        return list("4A", codes);
    }

    /** $01 PID $41, bytes A to D. */
    ScanText cycle(String bytes) {
        return line("41 41 " + bytes);
    }

    /** $01 PID $01, bytes A to D. */
    ScanText readiness(String bytes) {
        return line("41 01 " + bytes);
    }

    ScanText status(String code, int status) {
        return status(code, status, 0xFF);
    }

    ScanText status(String code, int status, int availability) {
        return line("59 02 %02X %s 00 %02X".formatted(availability, bytes(code), status));
    }

    ScanText kilometresSinceClear(int km) {
        return line("41 31 %02X %02X".formatted(km >> 8, km & 0xFF));
    }

    ScanText warmUpsSinceClear(int count) {
        return line("41 30 %02X".formatted(count));
    }

    ScanText minutesSinceClear(int minutes) {
        return line("41 4E %02X %02X".formatted(minutes >> 8, minutes & 0xFF));
    }

    ScanText odometer(int tenths) {
        return line("41 A6 %02X %02X %02X %02X"
                .formatted(tenths >> 24 & 0xFF, tenths >> 16 & 0xFF, tenths >> 8 & 0xFF, tenths & 0xFF));
    }

    /** Service $06, one test on CAN. */
    ScanText test(String record) {
        return line("46 " + record);
    }

    /** Service $09 infotype $08 with the first numerators set; 16 counters on CAN. */
    ScanText inUse(int qualifying, int ignitions, int catalyst1) {
        int[] counts = new int[16];
        counts[0] = qualifying;
        counts[1] = ignitions;
        counts[2] = catalyst1;
        counts[3] = qualifying;
        StringBuilder text = new StringBuilder("49 08 10");
        for (int count : counts) {
            text.append(" %02X %02X".formatted(count >> 8, count & 0xFF));
        }
        return line(text.toString());
    }

    ScanText engineOff() {
        return line("41 0C 00 00").line("41 1F 00 00");
    }

    ScanText cleared() {
        return line("44");
    }

    ScanText line(String line) {
        lines.add(line);
        return this;
    }

    Scan read() {
        Scan scan = Scan.read(String.join("\n", lines));
        scan.lines().stream()
                .filter(line -> line.outcome() == Scan.Line.Outcome.NOT_UNDERSTOOD)
                .findFirst()
                .ifPresent(line -> {
                    throw new IllegalStateException(line.toString());
                });
        return scan;
    }

    private ScanText list(String service, String... codes) {
        StringBuilder text = new StringBuilder("%s %02X".formatted(service, codes.length));
        for (String code : codes) {
            text.append(' ').append(bytes(code));
        }
        return line(text.toString());
    }

    private static String bytes(String code) {
        int number = TroubleCode.parse(code).number();
        return "%02X %02X".formatted(number >> 8, number & 0xFF);
    }
}
