package dev.stayfixed.recording;

import java.util.Arrays;
import java.util.Optional;

/** Whether the values of a whole column are usual in its unit; keeps some of them, evenly spread, however long the log. */
final class UsualShare {

    private static final int MOST = 4_096;

    private final ColumnMapping mapping;
    private double[] kept = new double[64];
    private int size;
    /** A power of two. */
    private long stride = 1;

    private long seen;

    UsualShare(ColumnMapping mapping) {
        this.mapping = mapping;
    }

    void add(double number) {
        if ((seen++ & (stride - 1)) != 0) {
            return;
        }
        if (size == MOST) {
            for (int i = 0; i < MOST / 2; i++) {
                kept[i] = kept[2 * i];
            }
            size = MOST / 2;
            stride *= 2;
        } else if (size == kept.length) {
            kept = Arrays.copyOf(kept, 2 * size);
        }
        kept[size++] = number;
    }

    double highest() {
        return Arrays.stream(kept, 0, size).max().orElse(0);
    }

    /** The unit in which the values are usual, where they are not in their own. */
    Optional<SourceUnit> contradiction() {
        return UsualValues.contradiction(mapping.signal(), mapping.unit(), Arrays.copyOf(kept, size));
    }
}
