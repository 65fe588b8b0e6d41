package dev.stayfixed;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.boot.context.properties.ConfigurationPropertiesScan;

/** Starts the service. */
@SpringBootApplication
@ConfigurationPropertiesScan
public class StayfixedApplication {

    public static void main(String[] args) {
        SpringApplication.run(StayfixedApplication.class, args);
    }
}
