package dev.stayfixed.platform;

import dev.stayfixed.platform.storage.Durably;
import io.swagger.v3.oas.annotations.Hidden;
import java.sql.SQLException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.dao.CannotAcquireLockException;
import org.springframework.jdbc.UncategorizedSQLException;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Failures that cannot be brought about from outside, so that their answers can be tested. */
@Hidden
@RestController
class PlantedFailure {

    private final Map<String, Integer> tries = new ConcurrentHashMap<>();
    private final Durably durably;

    PlantedFailure(Durably durably) {
        this.durably = durably;
    }

    @GetMapping("/planted-failure")
    String fail() {
        throw new IllegalStateException("planted");
    }

    /** The database, as its driver reports it. */
    @GetMapping("/planted-failure/database")
    String database(@RequestParam String state) {
        return durably.read(() -> {
            throw new UncategorizedSQLException("planted", null, new SQLException("planted", state));
        });
    }

    /**
     * A write that others are faster than.
     *
     * @param times how often in a row
     */
    @PostMapping("/planted-failure/conflict")
    String conflict(@RequestParam String name, @RequestParam int times) {
        return durably.write(() -> {
            int tried = tries.merge(name, 1, Integer::sum);
            if (tried <= times) {
                throw new CannotAcquireLockException("planted");
            }
            return "try " + tried;
        });
    }
}
