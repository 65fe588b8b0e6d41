package dev.stayfixed.telling;

import dev.stayfixed.platform.Sha256;
import dev.stayfixed.platform.storage.JavaStep;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.springframework.stereotype.Component;

/** Of the links of calendars only a digest is kept; they go on working. */
@Component
class HashedCalendarLinks extends JavaStep {

    HashedCalendarLinks() {
        super("52.1", "hashed_calendar_links");
    }

    @Override
    protected void on(Connection connection) throws SQLException {
        try (Statement select = connection.createStatement();
                ResultSet rows = select.executeQuery("select shop_id, token_hash from calendar_link");
                PreparedStatement update =
                        connection.prepareStatement("update calendar_link set token_hash = ? where shop_id = ?")) {
            while (rows.next()) {
                update.setString(1, Sha256.hex(rows.getString("token_hash")));
                update.setObject(2, rows.getObject("shop_id"));
                update.addBatch();
            }
            update.executeBatch();
        }
    }
}
