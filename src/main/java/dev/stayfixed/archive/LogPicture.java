package dev.stayfixed.archive;

import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.drive.signal.SignalRow;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The signals of a log that the page of its drive draws, thinned out: of each stretch of time the lowest and the highest value, so that
 * no peak is lost. It is kept beside the drive, so that a view reads no log, and can be made again from the log.
 */
public final class LogPicture {

    /** What is drawn, from top to bottom. */
    public static final List<Signal> DRAWN = List.of(Signal.VEHICLE_SPEED, Signal.ENGINE_SPEED, Signal.COOLANT);

    /** To be raised whenever the same log would give another picture, or the bytes are written differently. */
    static final int VERSION = 1;

    /** Values are kept to a thousandth. */
    private static final double PARTS = 1_000;

    private final Map<Signal, Trace> traces;

    private LogPicture(Map<Signal, Trace> traces) {
        this.traces = traces;
    }

    /** The course of a signal; empty where it was not recorded. */
    public Optional<Trace> of(Signal signal) {
        return Optional.ofNullable(traces.get(signal));
    }

    /** The values of one signal, in their order. */
    public static final class Trace {

        private final long[] at;
        private final long[] value;

        private Trace(int points) {
            at = new long[points];
            value = new long[points];
        }

        /** s since the first row; ascending. */
        public double[] seconds() {
            double[] seconds = new double[at.length];
            for (int i = 0; i < at.length; i++) {
                seconds[i] = at[i] / 1_000.0;
            }
            return seconds;
        }

        /** In the signal's own unit. */
        public double[] values() {
            double[] values = new double[value.length];
            for (int i = 0; i < value.length; i++) {
                values[i] = value[i] / PARTS;
            }
            return values;
        }
    }

    /** As few bytes as are simple: of each number how much it differs from the one before. */
    byte[] bytes() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            out.writeByte(traces.size());
            for (Map.Entry<Signal, Trace> entry : traces.entrySet()) {
                Trace trace = entry.getValue();
                out.writeUTF(entry.getKey().name());
                out.writeInt(trace.at.length);
                writeSteps(out, trace.at);
                writeSteps(out, trace.value);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("memory takes every byte", e);
        }
        return bytes.toByteArray();
    }

    /** What {@link #bytes()} wrote under this version. */
    static LogPicture read(byte[] bytes) {
        Map<Signal, Trace> traces = new EnumMap<>(Signal.class);
        try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
            for (int left = in.readByte(); left > 0; left--) {
                Signal signal = Signal.valueOf(in.readUTF());
                Trace trace = new Trace(in.readInt());
                readSteps(in, trace.at);
                readSteps(in, trace.value);
                traces.put(signal, trace);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("a picture of version " + VERSION + " broke off", e);
        }
        return new LogPicture(traces);
    }

    /** Seven bits a byte, the lowest first; the sign is the lowest bit. */
    private static void writeSteps(DataOutputStream out, long[] numbers) throws IOException {
        long before = 0;
        for (long number : numbers) {
            long step = number - before;
            before = number;
            long left = (step << 1) ^ (step >> 63);
            while ((left & ~0x7FL) != 0) {
                out.writeByte((int) ((left & 0x7F) | 0x80));
                left >>>= 7;
            }
            out.writeByte((int) left);
        }
    }

    private static void readSteps(DataInputStream in, long[] numbers) throws IOException {
        long before = 0;
        for (int i = 0; i < numbers.length; i++) {
            long step = 0;
            int part;
            int shift = 0;
            do {
                part = in.readByte();
                step |= (long) (part & 0x7F) << shift;
                shift += 7;
            } while (part < 0);
            before += (step >>> 1) ^ -(step & 1);
            numbers[i] = before;
        }
    }

    /**
     * Draws from rows, in constant memory. How long the log is shows only at its end, so the stretches begin short, and whenever there
     * would be too many of them each two become one.
     */
    static final class Drawing implements Consumer<SignalRow> {

        /** Each gives two points at most. */
        static final int MOST_STRETCHES = 10_000;

        private final Map<Signal, Line> lines = new EnumMap<>(Signal.class);
        private boolean started;
        private long start;
        private long now;
        private long width = 1;

        @Override
        public void accept(SignalRow row) {
            now = started ? Math.max(now, row.millis()) : row.millis();
            start = started ? start : now;
            started = true;
            long at = now - start;
            while (at / width >= MOST_STRETCHES) {
                width *= 2;
                lines.values().forEach(Line::halve);
            }
            for (Signal signal : DRAWN) {
                double value = row.valueOrNaN(signal);
                if (!Double.isNaN(value)) {
                    lines.computeIfAbsent(signal, s -> new Line()).add((int) (at / width), at, value);
                }
            }
        }

        LogPicture picture() {
            Map<Signal, Trace> traces = new EnumMap<>(Signal.class);
            lines.forEach((signal, line) -> traces.put(signal, line.trace()));
            return new LogPicture(Collections.unmodifiableMap(traces));
        }
    }

    /** Of each stretch the lowest and the highest value and when they were; NaN where there is none. */
    private static final class Line {

        private final double[] low = new double[Drawing.MOST_STRETCHES];
        private final double[] high = new double[Drawing.MOST_STRETCHES];
        private final long[] lowAt = new long[Drawing.MOST_STRETCHES];
        private final long[] highAt = new long[Drawing.MOST_STRETCHES];
        private int used;

        void add(int stretch, long at, double value) {
            while (used <= stretch) {
                low[used] = Double.NaN;
                high[used++] = Double.NaN;
            }
            if (!(low[stretch] <= value)) {
                low[stretch] = value;
                lowAt[stretch] = at;
            }
            if (!(high[stretch] >= value)) {
                high[stretch] = value;
                highAt[stretch] = at;
            }
        }

        void halve() {
            int before = used;
            used = 0;
            for (int from = 0; from < before; from++) {
                double lowest = low[from];
                double highest = high[from];
                long lowestAt = lowAt[from];
                long highestAt = highAt[from];
                if (!Double.isNaN(lowest)) {
                    add(from / 2, lowestAt, lowest);
                    add(from / 2, highestAt, highest);
                } else if (used <= from / 2) {
                    low[used] = Double.NaN;
                    high[used++] = Double.NaN;
                }
            }
        }

        Trace trace() {
            int points = 0;
            for (int i = 0; i < used; i++) {
                points += Double.isNaN(low[i]) ? 0 : low[i] == high[i] ? 1 : 2;
            }
            Trace trace = new Trace(points);
            int point = 0;
            for (int i = 0; i < used; i++) {
                if (Double.isNaN(low[i])) {
                    continue;
                }
                boolean lowFirst = lowAt[i] <= highAt[i];
                trace.at[point] = lowFirst ? lowAt[i] : highAt[i];
                trace.value[point++] = Math.round((lowFirst ? low[i] : high[i]) * PARTS);
                if (low[i] != high[i]) {
                    trace.at[point] = lowFirst ? highAt[i] : lowAt[i];
                    trace.value[point++] = Math.round((lowFirst ? high[i] : low[i]) * PARTS);
                }
            }
            return trace;
        }
    }
}
