package dev.stayfixed.platform;

import dev.stayfixed.telling.delivery.Bell;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;

/** The service with nothing going on in the background but what the test rings for, a clock that the test moves, and a mail server. */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(InDefaultShop.class)
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {
            "stayfixed.background=false",
            "stayfixed.webhooks.private-targets=true",
            "stayfixed.public-url=https://shop.example",
            "spring.mail.host=127.0.0.1",
            "spring.mail.port=${greenmail.port}",
            "spring.mail.properties.mail.smtp.timeout=30000"
        })
@Import({H2InFile.class, MovingClock.Given.class, Bell.class, MailServer.class})
public @interface TellingOnH2 {}
