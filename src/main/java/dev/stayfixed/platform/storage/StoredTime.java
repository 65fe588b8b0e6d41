package dev.stayfixed.platform.storage;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;

/** Moments in rows: {@code timestamp with time zone}, written in UTC. */
public final class StoredTime {

    private StoredTime() {}

    public static OffsetDateTime of(Instant moment) {
        return moment.atOffset(ZoneOffset.UTC);
    }

    /** Of a column that may not be null. */
    public static Instant in(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }

    /** Of a column that may be null. */
    public static Optional<Instant> ifAny(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }
}
