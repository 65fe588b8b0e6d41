package dev.stayfixed.platform.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.platform.OnH2;
import dev.stayfixed.platform.OnPostgres;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What no row may say is refused by the database itself, whoever writes it. */
class RefusedRowsTest {

    abstract static class Rows {

        @LocalServerPort
        int port;

        @Autowired
        Durably durably;

        @Autowired
        JdbcClient jdbc;

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "update job set state = 'HALF'",
                    "update job set state = 'CLOSED'",
                    "update job set closed_at = opened_at",
                    "update vehicle set ignition = 'STEAM'",
                    "update fault set required_passes = 0",
                    "update fault set standing_state = 'SURELY_FIXED'",
                    "update drive set revision = 0",
                    "update drive set until_at = timestamp with time zone '1990-01-01 00:00:00+00:00'",
                    "update submission set log_type = 'text/csv'",
                    "insert into drive_picture (drive_id, revision, version, content) select id, 1, 1, original from submission"
                })
        void areRefused(String statement) {
            Shop shop = new Shop(new Client(port));
            Answer vehicle = shop.vehicle("rows");
            shop.repair(shop.job(vehicle), "2026-03-02T16:00:00Z");
            shop.drive(vehicle, "2026-03-03T07:00:00Z", Shop.RAN_CLEAN).is(201);
            assertThatThrownBy(() -> durably.write(() -> jdbc.sql(statement).update()))
                    .satisfiesAnyOf(
                            refused -> assertThat(refused).isInstanceOf(DataIntegrityViolationException.class),
                            refused -> assertThat(refused).rootCause().hasMessageContaining("row-level security"));
        }
    }

    @Nested
    @OnH2
    class InH2 extends Rows {}

    @Nested
    @OnPostgres
    class InPostgres extends Rows {}
}
