package dev.stayfixed.telling.delivery;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;

/** Between rows and facts. */
final class Rows {

    private Rows() {}

    static OffsetDateTime at(Instant instant) {
        return instant.atOffset(ZoneOffset.UTC);
    }

    static Delivery delivery(ResultSet row, int number) throws SQLException {
        return new Delivery(
                row.getObject("id", UUID.class),
                row.getString("channel"),
                UUID.fromString(row.getString("target")),
                row.getString("stream"),
                row.getObject("event_id", UUID.class),
                Optional.ofNullable(row.getObject("job_id", UUID.class)),
                row.getString("kind"),
                row.getString("payload"),
                Delivery.State.valueOf(row.getString("state")),
                row.getBoolean("by_hand"),
                row.getInt("attempts"),
                row.getObject("created_at", OffsetDateTime.class).toInstant(),
                instant(row, "first_tried_at"),
                row.getObject("next_at", OffsetDateTime.class).toInstant(),
                instant(row, "settled_at"));
    }

    static Delivery.Attempt attempt(ResultSet row, int number) throws SQLException {
        return new Delivery.Attempt(
                row.getInt("number"),
                row.getObject("at", OffsetDateTime.class).toInstant(),
                row.getLong("took_ms"),
                row.getString("outcome"),
                row.getString("detail"),
                Optional.ofNullable(row.getString("answer")));
    }

    static Optional<Instant> instant(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }
}
