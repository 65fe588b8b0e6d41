package dev.stayfixed.web;

import dev.stayfixed.platform.HeardVerdicts;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What every test against the running service has at hand. */
abstract class OverHttp {

    private static final List<String> TABLES = List.of(
            "vehicle",
            "job",
            "job_state_change",
            "fault",
            "fault_condition",
            "repair",
            "repair_fault",
            "repair_part",
            "measurement",
            "engine_check",
            "engine_check_run",
            "submission",
            "submission_part",
            "log_mapping",
            "drive_condition",
            "drive",
            "drive_left_out",
            "idempotency_key");

    @LocalServerPort
    int port;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    HeardVerdicts heard;

    Client client;
    Shop shop;

    @BeforeEach
    void connect() {
        client = new Client(port);
        shop = new Shop(client);
    }

    Map<String, Long> rows() {
        Map<String, Long> rows = new LinkedHashMap<>();
        TABLES.forEach(table -> rows.put(
                table,
                jdbc.sql("select count(*) from " + table).query(Long.class).single()));
        return rows;
    }
}
