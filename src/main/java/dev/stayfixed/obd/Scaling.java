package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Quantity;
import dev.stayfixed.reason.Unit;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a service $06 value becomes a number: the unit-and-scaling ids of SAE J1979. Two public decoder libraries agree on every row
 * but 3A to 41, AD, AE and FC, which only one has.
 *
 * @param factor exact, as printed
 * @param offset added after scaling
 * @param unit "" for a plain number, "true/false" for id 2E
 */
record Scaling(BigDecimal factor, BigDecimal offset, String unit) {

    /** Id, factor, unit and, where there is one, the offset. */
    private static final String TABLE = """
            01 1 counts; 02 0.1 counts; 03 0.01 counts; 04 0.001 counts; 05 0.0000305 counts; 06 0.000305 counts;
            07 0.25 rpm; 08 0.01 km/h; 09 1 km/h; 0A 0.122 mV; 0B 0.001 V; 0C 0.01 V; 0D 0.00390625 mA; 0E 0.001 A;
            0F 0.01 A; 10 1 ms; 11 100 ms; 12 1 s; 13 1 mOhm; 14 1 Ohm; 15 1 kOhm; 16 0.1 °C -40; 17 0.01 kPa;
            18 0.0117 kPa; 19 0.079 kPa; 1A 1 kPa; 1B 10 kPa; 1C 0.01 °; 1D 0.5 °; 1E 0.0000305 lambda; 1F 0.05 A/F;
            20 0.00390625 -; 21 1 mHz; 22 1 Hz; 23 1 kHz; 24 1 counts; 25 1 km; 26 0.1 mV/ms; 27 0.01 g/s; 28 1 g/s;
            29 0.25 Pa/s; 2A 0.001 kg/h; 2B 1 switches; 2C 0.01 g/cyl; 2D 0.01 mg/stroke; 2E 1 true/false; 2F 0.01 %;
            30 0.001526 %; 31 0.001 L; 32 0.0000305 in; 33 0.00024414 lambda; 34 1 min; 35 10 ms; 36 0.01 g; 37 0.1 g;
            38 1 g; 39 0.01 % -327.68; 3A 0.001 g; 3B 0.0001 g; 3C 0.1 µs; 3D 0.01 mA; 3E 0.00006103516 mm²; 3F 0.01 L;
            40 1 ppm; 41 0.01 µA;
            81 1 counts; 82 0.1 counts; 83 0.01 counts; 84 0.001 counts; 85 0.0000305 counts; 86 0.000305 counts;
            87 1 ppm; 8A 0.122 mV; 8B 0.001 V; 8C 0.01 V; 8D 0.00390625 mA; 8E 0.001 A; 90 1 ms; 96 0.1 °C; 99 0.1 kPa;
            9C 0.01 °; 9D 0.5 °; A8 1 g/s; A9 0.25 Pa/s; AD 0.01 mg/stroke; AE 0.1 mg/stroke; AF 0.01 %; B0 0.003052 %;
            B1 2 mV/s; FC 0.01 kPa; FD 0.001 kPa; FE 0.25 Pa""";

    /** More than any factor of the table has. */
    private static final int DECIMALS = 12;

    private static final Map<Integer, Scaling> BY_ID = readTable();

    private static Map<Integer, Scaling> readTable() {
        Map<Integer, Scaling> rows = new HashMap<>();
        for (String row : TABLE.split(";\\s+", -1)) {
            String[] parts = row.split(" ", -1);
            BigDecimal offset = parts.length > 3 ? new BigDecimal(parts[3]) : BigDecimal.ZERO;
            String unit = parts[2].equals("-") ? "" : parts[2];
            rows.put(Integer.parseInt(parts[0], 16), new Scaling(new BigDecimal(parts[1]), offset, unit));
        }
        return Map.copyOf(rows);
    }

    /** Empty for an id that the table does not know. */
    static Optional<Scaling> of(int scalingId) {
        return Optional.ofNullable(BY_ID.get(scalingId));
    }

    /** Ids from 0x80 on are two's complement. */
    static int signed(int scalingId, int raw) {
        return scalingId >= 0x80 ? (short) raw : raw;
    }

    BigDecimal apply(int signedRaw) {
        return factor.multiply(BigDecimal.valueOf(signedRaw)).add(offset);
    }

    boolean isTruth() {
        return unit.equals("true/false");
    }

    /** The value alone. */
    Part part(int signedRaw) {
        if (isTruth()) {
            return signedRaw == 0 ? TestReason.FALSE : TestReason.TRUE;
        }
        return new Quantity(apply(signedRaw).doubleValue(), Unit.ONE, DECIMALS, OptionalDouble.empty());
    }
}
