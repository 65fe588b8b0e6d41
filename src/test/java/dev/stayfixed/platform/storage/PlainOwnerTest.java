package dev.stayfixed.platform.storage;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.AllRows;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.OtherInstance;
import dev.stayfixed.platform.RealPostgres;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A database user who owns the tables and may make no role: the fences bind him, and the service works all the same. */
class PlainOwnerTest {

    private static final String USER = "plain_owner";
    private static final String SECRET = "of the test";

    @Test
    void theTablesBindTheirOwner() throws Exception {
        JdbcConnectionDetails database = RealPostgres.emptyDatabase();
        JdbcClient administrator = AllRows.of(database);
        administrator
                .sql("create role " + USER + " login password '" + SECRET + "'")
                .update();
        String name = administrator
                .sql("select current_database()")
                .query(String.class)
                .single();
        administrator.sql("alter database " + name + " owner to " + USER).update();
        String url = database.getJdbcUrl().replaceAll("\\?.*", "");
        for (int start = 1; start <= 2; start++) {
            try (OtherInstance service = new OtherInstance(url, USER, SECRET)) {
                Shop shop = new Shop(new Client(service.port()));
                Answer vehicle = shop.vehicle("of start " + start);
                shop.repair(shop.job(vehicle), "2026-03-02T16:00:00Z");
                shop.drive(vehicle, "2026-03-03T07:00:00Z", Shop.RAN_CLEAN).is(201);
            }
        }
        assertThat(administrator
                        .sql("select count(*) from vehicle")
                        .query(Long.class)
                        .single())
                .isEqualTo(2);
        try (Connection owner = DriverManager.getConnection(url, USER, SECRET)) {
            assertThat(vehicles(owner)).isZero();
            try (Statement statement = owner.createStatement()) {
                statement.execute("set stayfixed.shop = '" + CurrentShop.DEFAULT + "'");
            }
            assertThat(vehicles(owner)).isEqualTo(2);
            RowFences fences = new RowFences(owner);
            fences.lower();
            try (Statement statement = owner.createStatement()) {
                statement.execute("reset stayfixed.shop");
            }
            assertThat(vehicles(owner)).as("for a migration").isEqualTo(2);
            assertThat(fences.raise()).isEqualTo(RowFences.Bound.AS_OWNER);
            assertThat(vehicles(owner)).isZero();
        }
    }

    private static long vehicles(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("select count(*) from vehicle")) {
            rows.next();
            return rows.getLong(1);
        }
    }
}
