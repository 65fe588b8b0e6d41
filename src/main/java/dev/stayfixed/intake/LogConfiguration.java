package dev.stayfixed.intake;

import dev.stayfixed.recording.LogLimits;
import dev.stayfixed.recording.LogReader;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.util.unit.DataSize;

/** The reader of logs, with the limits of this service. */
@Configuration(proxyBeanMethods = false)
class LogConfiguration {

    @Bean
    LogReader logReader(@Value("${stayfixed.log-limit}") DataSize limit) {
        LogLimits usual = LogLimits.USUAL;
        return new LogReader(
                new LogLimits(limit.toBytes(), usual.ratio(), usual.columns(), usual.cellLength(), usual.zipEntries()));
    }
}
