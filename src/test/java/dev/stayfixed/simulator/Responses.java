package dev.stayfixed.simulator;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/** Builds the answers of SAE J1979 services $01, $02, $03, $06, $07, $09, $0A and ISO 14229-1 $19 02 from the computer's memory. */
final class Responses {

    private final EngineComputer computer;
    private final String vin;
    private final boolean twoUnits;
    private final List<Message> messages = new ArrayList<>();

    Responses(EngineComputer computer, String vin, boolean twoUnits) {
        this.computer = computer;
        this.vin = vin;
        this.twoUnits = twoUnits;
    }

    List<Message> to(Set<Ask> asked) {
        for (Ask ask : Ask.values()) {
            if (asked.contains(ask)) {
                answer(ask);
            }
        }
        return messages;
    }

    private void answer(Ask ask) {
        switch (ask) {
            case VIN -> vin();
            case READINESS -> readiness();
            case CYCLE_READINESS -> add("01 41", bytes(0x41, 0x41, cycleReadiness()));
            case CONFIRMED -> codes(0x03, CodeState::isConfirmed);
            case PENDING -> codes(0x07, CodeState::isPending);
            case PERMANENT -> codes(0x0A, CodeState::isPermanent);
            case FREEZE_FRAME -> freezeFrame();
            case TEST_RESULTS -> testResults();
            case IN_USE -> inUse();
            case STATUS -> status(0x02, "19 02 FF", c -> c.statusByte() != 0);
            case SUPPORTED_CODES -> status(0x0A, "19 0A", c -> true);
            case COUNTERS -> counters();
            case LIVE -> live();
        }
    }

    private void add(String request, int... bytes) {
        messages.add(Message.of(request, 0, bytes));
    }

    private void vin() {
        int[] bytes = new int[3 + vin.length()];
        bytes[0] = 0x49;
        bytes[1] = 0x02;
        bytes[2] = 0x01;
        for (int i = 0; i < vin.length(); i++) {
            bytes[3 + i] = vin.charAt(i);
        }
        add("09 02", bytes);
    }

    private void readiness() {
        add("01 01", bytes(0x41, 0x01, sinceClear()));
        if (twoUnits) {
            messages.add(Message.of("01 01", 1, 0x41, 0x01, 0x00, 0x04, 0x00, 0x00));
        }
    }

    private int[] sinceClear() {
        int confirmed = computer.codesThat(CodeState::isConfirmed).size();
        int b = combustionBit();
        int c = 0;
        int d = 0;
        for (Group group : computer.groups()) {
            boolean complete = computer.members(group).stream().allMatch(CodeState::decidedSinceClear);
            if (group.isContinuous()) {
                // Usually shown complete from key-on, whatever has run.
                b |= 1 << group.bit();
            } else {
                c |= 1 << group.bit();
                d |= complete ? 0 : 1 << group.bit();
            }
        }
        return new int[] {(computer.isMilOn() ? 0x80 : 0) | confirmed, b, c, d};
    }

    private int[] cycleReadiness() {
        int b = combustionBit();
        int c = 0;
        int d = 0;
        for (Group group : computer.groups()) {
            List<CodeState> members = computer.members(group);
            boolean complete = members.stream().allMatch(CodeState::completedThisCycle);
            boolean enabled = complete || members.stream().allMatch(computer::isEnabled);
            if (group.isContinuous()) {
                b |= 1 << group.bit();
            } else if (enabled) {
                c |= 1 << group.bit();
                d |= complete ? 0 : 1 << group.bit();
            }
        }
        return new int[] {0, b, c, d};
    }

    private int combustionBit() {
        return computer.combustion == Combustion.COMPRESSION ? 0x08 : 0;
    }

    private void codes(int service, Predicate<CodeState> which) {
        List<String> codes = computer.codesThat(which);
        int[] bytes = new int[2 + 2 * codes.size()];
        bytes[0] = 0x40 + service;
        bytes[1] = codes.size();
        for (int i = 0; i < codes.size(); i++) {
            bytes[2 + 2 * i] = value(codes.get(i)) >> 8;
            bytes[3 + 2 * i] = value(codes.get(i)) & 0xFF;
        }
        String request = "%02X".formatted(service);
        add(request, bytes);
        if (twoUnits) {
            messages.add(Message.of(request, 1, 0x40 + service, 0));
        }
    }

    /** SAE J2012: P is 00 in the top bits, so the four digits are the value. */
    static int value(String code) {
        if (!code.matches("P[0-3][0-9A-F]{3}")) {
            throw new IllegalArgumentException("found " + code + ", expected a powertrain code");
        }
        return Integer.parseInt(code.substring(1), 16);
    }

    private void freezeFrame() {
        int code = computer.freezeFrame().map(f -> value(f.code())).orElse(0);
        add("02 02 00", 0x42, 0x02, 0x00, code >> 8, code & 0xFF);
        computer.freezeFrame().map(FreezeFrame::at).ifPresent(at -> {
            int rpm = at.rpm() * 4;
            add("02 04 00", 0x42, 0x04, 0x00, percent(at.load()));
            add("02 05 00", 0x42, 0x05, 0x00, at.coolant() + 40);
            add("02 0C 00", 0x42, 0x0C, 0x00, rpm >> 8, rpm & 0xFF);
            add("02 0D 00", 0x42, 0x0D, 0x00, at.speed());
        });
    }

    private void testResults() {
        for (CodeState state : computer.codes()) {
            MonitoredCode.Record06 record = state.spec.record();
            if (record.monitor() != 0) {
                int[] v = computer.results().of(state.spec);
                add(
                        "06 %02X".formatted(record.monitor()),
                        bytes(
                                0x46,
                                record.monitor(),
                                record.test(),
                                record.scaling(),
                                v[0] >> 8,
                                v[0] & 0xFF,
                                v[1] >> 8,
                                v[1] & 0xFF,
                                v[2] >> 8,
                                v[2] & 0xFF));
            }
        }
    }

    private void inUse() {
        boolean spark = computer.combustion == Combustion.SPARK;
        List<String> names = spark ? InUse.SPARK : InUse.COMPRESSION;
        int infotype = spark ? 0x08 : 0x0B;
        int[] bytes = new int[3 + 2 * names.size()];
        bytes[0] = 0x49;
        bytes[1] = infotype;
        bytes[2] = names.size();
        for (int i = 0; i < names.size(); i++) {
            int count = computer.inUse.count(names.get(i));
            bytes[3 + 2 * i] = count >> 8;
            bytes[4 + 2 * i] = count & 0xFF;
        }
        add("09 %02X".formatted(infotype), bytes);
    }

    private void status(int subfunction, String request, Predicate<CodeState> listed) {
        List<CodeState> codes = computer.codes().stream().filter(listed).toList();
        int[] bytes = new int[3 + 4 * codes.size()];
        bytes[0] = 0x59;
        bytes[1] = subfunction;
        bytes[2] = 0xFF;
        for (int i = 0; i < codes.size(); i++) {
            int code = value(codes.get(i).spec.code());
            bytes[3 + 4 * i] = code >> 8;
            bytes[4 + 4 * i] = code & 0xFF;
            bytes[5 + 4 * i] = 0x00;
            bytes[6 + 4 * i] = codes.get(i).statusByte();
        }
        add(request, bytes);
    }

    private void counters() {
        Counters c = computer.counters;
        add("01 1F", word(0x1F, c.runTime()));
        add("01 21", word(0x21, c.kmWithMil()));
        add("01 30", 0x41, 0x30, c.warmUps());
        add("01 31", word(0x31, c.kmSinceClear()));
        add("01 4D", word(0x4D, c.minutesWithMil()));
        add("01 4E", word(0x4E, c.minutesSinceClear()));
        int odometer = (int) c.odometer();
        add("01 A6", 0x41, 0xA6, odometer >>> 24, (odometer >> 16) & 0xFF, (odometer >> 8) & 0xFF, odometer & 0xFF);
    }

    private void live() {
        Start start = computer.start();
        int coolant = computer.last().map(Sample::coolant).orElse(start.coolant());
        int rpm = computer.last().map(Sample::rpm).orElse(0) * 4;
        add("01 05", 0x41, 0x05, coolant + 40);
        add("01 0C", 0x41, 0x0C, rpm >> 8, rpm & 0xFF);
        add("01 2F", 0x41, 0x2F, percent(start.fuel()));
        add("01 33", 0x41, 0x33, start.barometer());
        add("01 46", 0x41, 0x46, start.ambient() + 40);
    }

    private static int percent(double value) {
        return (int) Math.round(value * 255 / 100);
    }

    private static int[] word(int pid, int value) {
        return new int[] {0x41, pid, value >> 8, value & 0xFF};
    }

    private static int[] bytes(int first, int second, int... rest) {
        int[] all = new int[2 + rest.length];
        all[0] = first;
        all[1] = second;
        System.arraycopy(rest, 0, all, 2, rest.length);
        return all;
    }
}
