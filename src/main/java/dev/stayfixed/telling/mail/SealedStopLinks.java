package dev.stayfixed.telling.mail;

import dev.stayfixed.platform.LinkToken;
import dev.stayfixed.platform.storage.JavaStep;
import dev.stayfixed.platform.storage.Seal;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** The tokens that stop mails are sealed, and taken out of the letters that wait or were sent; the links in mails go on working. */
@Component
class SealedStopLinks extends JavaStep {

    private static final String STOP = "/mail-stop/";

    private final Seal seal;
    private final JsonMapper json;

    SealedStopLinks(Seal seal) {
        super("52.3", "sealed_mail_stop_links");
        this.seal = seal;
        this.json = JsonMapper.shared();
    }

    @Override
    protected void on(Connection connection) throws SQLException {
        sealTokens(connection);
        try (Statement change = connection.createStatement()) {
            change.execute("alter table mail_recipient alter column token_hash set not null");
            change.execute("alter table mail_recipient alter column sealed_token set not null");
            change.execute("alter table mail_recipient add constraint mail_recipient_token_once unique (token_hash)");
            change.execute("alter table mail_recipient drop column token");
        }
        changeLetters(connection);
    }

    private void sealTokens(Connection connection) throws SQLException {
        try (Statement select = connection.createStatement();
                ResultSet rows = select.executeQuery("select id, token from mail_recipient");
                PreparedStatement update = connection.prepareStatement(
                        "update mail_recipient set token_hash = ?, sealed_token = ? where id = ?")) {
            while (rows.next()) {
                Object id = rows.getObject("id");
                String token = rows.getString("token");
                update.setString(1, LinkToken.hash(token));
                update.setString(2, seal.close(token, Recipients.place(id)));
                update.setObject(3, id);
                update.addBatch();
            }
            update.executeBatch();
        }
    }

    private void changeLetters(Connection connection) throws SQLException {
        try (Statement select = connection.createStatement();
                ResultSet rows = select.executeQuery("select id, payload from delivery where channel = '"
                        + MailChannel.NAME + "' and payload like '%" + STOP + "%'");
                PreparedStatement update =
                        connection.prepareStatement("update delivery set payload = ? where id = ?")) {
            while (rows.next()) {
                Letter letter = json.readValue(rows.getString("payload"), Letter.class);
                if (letter.stop() != null) {
                    update.setString(1, json.writeValueAsString(withoutToken(letter, letter.stop())));
                    update.setObject(2, rows.getObject("id"));
                    update.addBatch();
                }
            }
            update.executeBatch();
        }
    }

    /** Its text ended with the link. */
    static Letter withoutToken(Letter letter, String link) {
        return new Letter(
                letter.subject(),
                letter.text().replace(link + "\n", "").replace(link, ""),
                link.substring(0, link.lastIndexOf('/') + 1));
    }
}
