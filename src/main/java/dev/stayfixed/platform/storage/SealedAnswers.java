package dev.stayfixed.platform.storage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.springframework.stereotype.Component;

/** Answers that were stored in the clear are sealed. */
@Component
class SealedAnswers extends JavaStep {

    private static final int AT_ONCE = 500;

    private final Seal seal;

    SealedAnswers(Seal seal) {
        super("51", "sealed_answers");
        this.seal = seal;
    }

    @Override
    protected void on(Connection connection) throws SQLException {
        try (Statement select = connection.createStatement();
                PreparedStatement update = connection.prepareStatement(
                        "update idempotency_key set body = ? where shop_id = ? and name = ?")) {
            select.setFetchSize(AT_ONCE);
            int waiting = 0;
            try (ResultSet rows = select.executeQuery(
                    "select shop_id, name, location, body from idempotency_key where body is not null")) {
                while (rows.next()) {
                    String name = rows.getString("name");
                    update.setString(
                            1,
                            seal.close(
                                    StoredAnswers.together(rows.getString("location"), rows.getString("body")),
                                    StoredAnswers.place(name)));
                    update.setObject(2, rows.getObject("shop_id"));
                    update.setString(3, name);
                    update.addBatch();
                    if (++waiting % AT_ONCE == 0) {
                        update.executeBatch();
                    }
                }
            }
            update.executeBatch();
        }
        try (Statement drop = connection.createStatement()) {
            drop.execute("alter table idempotency_key drop column location");
        }
    }
}
