package dev.stayfixed.telling.webhooks;

import dev.stayfixed.platform.storage.JavaStep;
import dev.stayfixed.platform.storage.Seal;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.springframework.stereotype.Component;

/** The secrets of endpoints that were stored in the clear are sealed; they stay the same. */
@Component
class SealedSecrets extends JavaStep {

    private final Seal seal;

    SealedSecrets(Seal seal) {
        super("52.2", "sealed_webhook_secrets");
        this.seal = seal;
    }

    @Override
    protected void on(Connection connection) throws SQLException {
        try (Statement select = connection.createStatement();
                ResultSet rows = select.executeQuery("select id, secret, previous_secret from webhook_endpoint");
                PreparedStatement update = connection.prepareStatement(
                        "update webhook_endpoint set secret = ?, previous_secret = ? where id = ?")) {
            while (rows.next()) {
                Object id = rows.getObject("id");
                String place = StoredEndpoints.place(id);
                String previous = rows.getString("previous_secret");
                update.setString(1, seal.close(rows.getString("secret"), place));
                update.setString(2, previous == null ? null : seal.close(previous, place));
                update.setObject(3, id);
                update.addBatch();
            }
            update.executeBatch();
        }
    }
}
