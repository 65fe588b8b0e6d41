package dev.stayfixed.people;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.UUID;

/**
 * Somebody who may use the service.
 *
 * @param mail in lower case; nobody else has it
 */
public record Person(UUID id, String mail, String name) {

    static Person of(ResultSet row, int number) throws SQLException {
        return new Person(row.getObject("id", UUID.class), row.getString("mail"), row.getString("name"));
    }
}
