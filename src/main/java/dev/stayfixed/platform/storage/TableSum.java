package dev.stayfixed.platform.storage;

import dev.stayfixed.platform.Sha256;
import java.math.BigInteger;
import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a table holds: how many rows, and the sum of their SHA-256, so that the order in which a database gives them does not matter.
 *
 * @param digest 64 hexadecimal digits, all 0 for no rows
 */
record TableSum(long rows, String digest) {

    /** Takes row by row. */
    static final class Adding {

        private static final BigInteger ALL = BigInteger.ONE.shiftLeft(256);

        private long rows;
        private BigInteger sum = BigInteger.ZERO;

        void add(List<ValueKind> kinds, @Nullable Object[] row) {
            MessageDigest digest = Sha256.begin();
            for (int i = 0; i < row.length; i++) {
                Object value = row[i];
                byte[] bytes = value == null ? new byte[0] : kinds.get(i).canonical(value);
                digest.update(ByteBuffer.allocate(Integer.BYTES)
                        .putInt(value == null ? -1 : bytes.length)
                        .array());
                digest.update(bytes);
            }
            sum = sum.add(new BigInteger(1, digest.digest())).mod(ALL);
            rows++;
        }

        TableSum sum() {
            byte[] bytes = new byte[32];
            byte[] value = sum.toByteArray();
            int length = Math.min(32, value.length);
            System.arraycopy(value, value.length - length, bytes, 32 - length, length);
            return new TableSum(rows, HexFormat.of().formatHex(bytes));
        }
    }
}
