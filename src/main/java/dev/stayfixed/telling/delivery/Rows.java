package dev.stayfixed.telling.delivery;

import dev.stayfixed.platform.storage.StoredTime;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.UUID;

/** Between rows and facts. */
final class Rows {

    private Rows() {}

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
                StoredTime.in(row, "created_at"),
                StoredTime.ifAny(row, "first_tried_at"),
                StoredTime.in(row, "next_at"),
                StoredTime.ifAny(row, "settled_at"));
    }

    static Delivery.Attempt attempt(ResultSet row, int number) throws SQLException {
        return new Delivery.Attempt(
                row.getInt("number"),
                StoredTime.in(row, "at"),
                row.getLong("took_ms"),
                row.getString("outcome"),
                row.getString("detail"),
                Optional.ofNullable(row.getString("answer")));
    }
}
