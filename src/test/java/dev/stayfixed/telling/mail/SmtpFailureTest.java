package dev.stayfixed.telling.mail;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.MessagingException;
import jakarta.mail.SendFailedException;
import java.net.ConnectException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.util.Map;
import java.util.stream.Stream;
import javax.net.ssl.SSLHandshakeException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.mail.MailAuthenticationException;
import org.springframework.mail.MailSendException;

class SmtpFailureTest {

    static Stream<Exception> silences() {
        return Stream.of(
                new MailSendException("down", new MessagingException("x", new ConnectException("10.0.0.7:25"))),
                new MailSendException("down", new MessagingException("x", new UnknownHostException("10.0.0.7"))),
                new MailSendException("down", new MessagingException("x", new SocketTimeoutException("10.0.0.7"))),
                new MailSendException("down", new MessagingException("x", new SSLHandshakeException("10.0.0.7"))),
                new MailAuthenticationException(new AuthenticationFailedException("jakarta.mail")),
                new MessagingException("jakarta.mail.SomeException: 10.0.0.7"));
    }

    @ParameterizedTest
    @MethodSource("silences")
    void noClassAndNoAddressIsNamed(Exception e) {
        SmtpFailure failure = SmtpFailure.of(e);
        assertThat(failure.isFinal()).isFalse();
        assertThat(failure.words()).contains("mail server").doesNotContain("Exception", "10.0.0.7", "jakarta");
    }

    @Test
    void aReplyIsToldAsItCameAndFiveIsFinal() {
        MessagingException outer = new SendFailedException("Invalid Addresses");
        outer.setNextException(new SendFailedException("550 5.1.1 nobody\n here\n"));
        SmtpFailure failure = SmtpFailure.of(new MailSendException(Map.of("mail", outer)));
        assertThat(failure).isEqualTo(new SmtpFailure("the mail server answered: 550 5.1.1 nobody here", true));
        assertThat(SmtpFailure.of(new SendFailedException("451 later")).isFinal())
                .isFalse();
        assertThat(SmtpFailure.of(new MessagingException("554 no service here")).isFinal())
                .as("said before the address was")
                .isFalse();
    }
}
