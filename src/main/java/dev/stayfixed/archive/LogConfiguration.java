package dev.stayfixed.archive;

import dev.stayfixed.platform.http.Limits;
import dev.stayfixed.recording.LogLimits;
import dev.stayfixed.recording.LogReader;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The reader of logs, with the limits of this service. */
@Configuration(proxyBeanMethods = false)
class LogConfiguration {

    @Bean
    LogReader logReader(Limits service) {
        LogLimits usual = LogLimits.USUAL;
        return new LogReader(new LogLimits(
                service.logLimit().toBytes(), usual.ratio(), usual.columns(), usual.cellLength(), usual.zipEntries()));
    }
}
