package dev.stayfixed.platform.problem;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Nothing comes into a log by the id of a request but a UUID. */
class RequestIdTest {

    private static final String ID = "0191f3a2-7b1c-4c58-9a1e-2f6f8c9b1d20";

    @ParameterizedTest
    @ValueSource(strings = {ID, "0191F3A2-7B1C-4C58-9A1E-2F6F8C9B1D20", "0191f3a27b1c4c589a1e2f6f8c9b1d20"})
    void aUuidIsTaken(String given) {
        assertThat(RequestId.orNew(given)).isEqualTo(ID);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "7", ID + "\nINFO all is well", "${jndi:ldap://x}", "0191f3a2-7b1c-4c58-9a1e-2f6f8c9b1d2"})
    void anythingElseIsNot(String given) {
        assertThat(RequestId.orNew(given)).matches("[0-9a-f-]{36}").isNotEqualTo(given);
    }

    @Test
    void whereNoneIsGivenOneIsMade() {
        assertThat(RequestId.orNew(null)).hasSize(36);
        assertThat(RequestId.uri(ID)).isEqualTo("urn:uuid:" + ID);
    }
}
