package dev.stayfixed.platform;

import static java.util.Objects.requireNonNull;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.test.context.DynamicPropertyRegistrar;

/** A real SMTP server on a port of its own; every test class has one. */
@TestConfiguration(proxyBeanMethods = false)
public class MailServer {

    /** The server and what it took. */
    public static final class Post implements AutoCloseable {

        private final GreenMail server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
        private final int port;
        private GreenMail again = server;
        private @Nullable HeldPort held;

        Post() {
            server.start();
            port = server.getSmtp().getPort();
        }

        public List<MimeMessage> to(String address) {
            return Stream.of(server, again)
                    .distinct()
                    .flatMap(s -> Arrays.stream(s.getReceivedMessages()))
                    .filter(m -> isTo(m, address))
                    .toList();
        }

        private static boolean isTo(MimeMessage message, String address) {
            try {
                return message.getAllRecipients()[0].toString().equals(address);
            } catch (MessagingException e) {
                throw new IllegalStateException(e);
            }
        }

        public void stop() throws IOException {
            server.getSmtp().stopService();
            held = new HeldPort(port);
        }

        /** On the same port as before. */
        public void start() throws IOException {
            requireNonNull(held).close();
            again = new GreenMail(new ServerSetup(port, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
            again.start();
        }

        /** What came after the server was started again. */
        public List<MimeMessage> afterRestart(String address) {
            return Arrays.stream(again.getReceivedMessages())
                    .filter(m -> isTo(m, address))
                    .toList();
        }

        int port() {
            return port;
        }

        @Override
        public void close() {
            again.stop();
            server.stop();
        }
    }

    @Bean
    Post post() {
        return new Post();
    }

    @Bean
    DynamicPropertyRegistrar mailPort(Post post) {
        return registry -> registry.add("greenmail.port", post::port);
    }
}
