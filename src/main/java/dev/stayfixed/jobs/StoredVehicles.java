package dev.stayfixed.jobs;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.Query;

interface StoredVehicles extends JpaRepository<StoredVehicle, UUID> {

    /** In plain SQL: queries that the shop is added to are translated anew each time. */
    @Query(
            value = "select * from vehicle where id = :id and shop_id = :#{@currentShop.id()} for update",
            nativeQuery = true)
    Optional<StoredVehicle> lock(UUID id);

    Optional<StoredVehicle> findByVin(String vin);

    @Query("select v.id from StoredVehicle v order by v.createdAt, v.id")
    List<UUID> allIds();

    @Query("""
            select v.id from StoredVehicle v where v.judgedBy is null or v.judgedBy <> :program
            order by v.createdAt, v.id""")
    List<UUID> judgedByOthers(String program);

    @Modifying
    @Query("update StoredVehicle v set v.judgedBy = null where v.judgedBy is not null")
    int forgetWhoJudged();
}
