package dev.stayfixed.telling.webhooks;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.ConnectException;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.util.stream.Stream;
import javax.net.ssl.SSLHandshakeException;
import org.apache.hc.core5.http.NoHttpResponseException;
import org.apache.hc.core5.http.ProtocolException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class UnansweredTest {

    static Stream<Exception> failures() {
        return Stream.of(
                new ConnectException("Connect to http://hooks.example:80 [hooks.example/10.0.0.7] failed"),
                new SSLHandshakeException("PKIX: sun.security.provider.certpath.SomeException"),
                new NoHttpResponseException("hooks.example/10.0.0.7 failed to respond"),
                new SocketException("Connection reset 10.0.0.7"),
                new ProtocolException("org.apache.hc 10.0.0.7"),
                new IllegalStateException("org.apache.hc 10.0.0.7"),
                new UnknownHostException("hooks.example"));
    }

    @ParameterizedTest
    @MethodSource("failures")
    void noClassAndNoAddressIsNamed(Exception e) {
        assertThat(Poster.words(e)).isNotBlank().doesNotContain("Exception", "10.0.0.7", "org.apache", "sun.");
    }
}
