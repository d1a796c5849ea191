/// How one simulated patient uses their parts over time, and what of it gets on record.
#pragma once

#include <optional>
#include <vector>

#include "clinic/clinic.hpp"
#include "random.hpp"
#include "simulated/law.hpp"
#include "wear/factors.hpp"

namespace sparewell::simulated {

class UsageHistory {
 public:
  /// From `start` on; after `today` only the changes that are announced.
  UsageHistory(const UsageLaw& law, Date start, Date today, sample::Random& random);

  /// exp(beta . z) on `day`, which is not before the start.
  [[nodiscard]] double wear_rate(Date day, const wear::FactorVector& beta) const;

  /// Adds the records as the law has them kept, and as they would be if all were known. What went
  /// before the records begin is not on record; what was in force then is, from then on.
  void record(const PatientRef& patient, std::optional<Date> records_begin, sample::Random& random,
              std::vector<Usage>& recorded, std::vector<Usage>& truth) const;

 private:
  struct Span {
    Usage usage;
    wear::FactorVector factors{};
  };
  [[nodiscard]] const Span& on(Date day) const;
  void add(const Usage& usage);

  UsageLaw law_;
  std::vector<Span> spans_;
};

}  // namespace sparewell::simulated
