package dev.stayfixed.intake.pages;

import java.util.Locale;

/**
 * A signal reduced to the pixel columns of a plot: the lowest and the highest value of each column are kept, so that no peak is lost
 * however many samples fall into one. A column without a reading breaks the line.
 */
final class PixelColumns {

    private final double[] low;
    private final double[] high;
    private final double[] last;

    private PixelColumns(int columns) {
        low = new double[columns];
        high = new double[columns];
        last = new double[columns];
        java.util.Arrays.fill(low, Double.NaN);
        java.util.Arrays.fill(high, Double.NaN);
        java.util.Arrays.fill(last, Double.NaN);
    }

    /** The samples from {@code from} to {@code to}, both inclusive, s. */
    static PixelColumns of(Recording.Signal signal, double from, double to, int columns) {
        PixelColumns result = new PixelColumns(columns);
        for (int i = 0; i < signal.samples(); i++) {
            double time = signal.time(i);
            double value = signal.value(i);
            if (time >= from && time <= to && !Double.isNaN(value)) {
                result.add((int) Math.min(columns - 1, (time - from) / (to - from) * columns), value);
            }
        }
        return result;
    }

    private void add(int column, double value) {
        low[column] = Double.isNaN(low[column]) ? value : Math.min(low[column], value);
        high[column] = Double.isNaN(high[column]) ? value : Math.max(high[column], value);
        last[column] = value;
    }

    double low(int column) {
        return low[column];
    }

    double high(int column) {
        return high[column];
    }

    double lowest() {
        return java.util.Arrays.stream(low).filter(v -> !Double.isNaN(v)).min().orElse(0);
    }

    double highest() {
        return java.util.Arrays.stream(high).filter(v -> !Double.isNaN(v)).max().orElse(1);
    }

    /**
     * The last value of each column for the read-out, comma-separated: empty where it is that of the column before, "-" where there is
     * none and the line breaks.
     */
    String readOut(int bridge) {
        StringBuilder text = new StringBuilder();
        String written = "-";
        int before = -1;
        for (int x = 0; x < last.length; x++) {
            before = Double.isNaN(last[x]) ? before : x;
            String here = before < 0 || x - before > bridge ? "-" : short1(last[before]);
            text.append(x == 0 ? "" : ",").append(x > 0 && here.equals(written) ? "" : here);
            written = here;
        }
        return text.toString();
    }

    /**
     * An SVG path. Empty columns up to {@code bridge} are drawn across, longer ones break the line.
     *
     * @param scale maps a value to y
     */
    String path(java.util.function.DoubleUnaryOperator scale, int bridge) {
        StringBuilder path = new StringBuilder();
        int before = -1;
        for (int x = 0; x < low.length; x++) {
            if (Double.isNaN(low[x])) {
                continue;
            }
            boolean isJoined = before >= 0 && x - before <= bridge;
            path.append(isJoined ? 'L' : 'M').append(x).append(' ').append(short1(scale.applyAsDouble(high[x])));
            if (low[x] != high[x]) {
                path.append('V').append(short1(scale.applyAsDouble(low[x])));
            } else if (!isJoined) {
                path.append("h1");
            }
            before = x;
        }
        return path.toString();
    }

    static String short1(double value) {
        String text = String.format(Locale.ROOT, "%.1f", value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }
}
