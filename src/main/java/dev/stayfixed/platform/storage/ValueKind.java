package dev.stayfixed.platform.storage;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.sql.Date;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What a column holds, so that both databases give the same value for it, and the same bytes to compare. */
enum ValueKind {
    TEXT(String.class, "varchar", "text", "bpchar"),
    NUMBER(Long.class, "int2", "int4", "int8", "bigserial", "serial"),
    DOUBLE(Double.class, "float8"),
    DECIMAL(BigDecimal.class, "numeric"),
    YES_OR_NO(Boolean.class, "bool"),
    ID(UUID.class, "uuid"),
    MOMENT(OffsetDateTime.class, "timestamptz"),
    DAY(Date.class, "date"),
    BYTES(byte[].class, "bytea");

    private final Class<?> type;

    @SuppressWarnings("ImmutableEnumChecker") // Set.of cannot be changed
    private final Set<String> names;

    ValueKind(Class<?> type, String... names) {
        this.type = type;
        this.names = Set.of(names);
    }

    /** By the name that PostgreSQL gives a type. */
    static Optional<ValueKind> of(String typeName) {
        return Arrays.stream(values())
                .filter(kind -> kind.names.contains(typeName))
                .findFirst();
    }

    @Nullable
    Object read(ResultSet row, int column) throws SQLException {
        return switch (this) {
            case BYTES -> row.getBytes(column);
            case NUMBER -> {
                long number = row.getLong(column);
                yield row.wasNull() ? null : number;
            }
            default -> row.getObject(column, type);
        };
    }

    /** The same for the same value, whichever database it is from. */
    byte[] canonical(Object value) {
        return switch (this) {
            case BYTES -> (byte[]) value;
            case MOMENT -> utf8(((OffsetDateTime) value).toInstant());
            case DECIMAL -> utf8(((BigDecimal) value).stripTrailingZeros().toPlainString());
            default -> utf8(value);
        };
    }

    private static byte[] utf8(Object value) {
        return value.toString().getBytes(StandardCharsets.UTF_8);
    }
}
