package dev.stayfixed;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/** Starts the service. */
@SpringBootApplication
public class StayfixedApplication {

    public static void main(String[] args) {
        SpringApplication.run(StayfixedApplication.class, args);
    }
}
