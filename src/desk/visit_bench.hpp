/// What to have ready on the bench for the visits of one day.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "desk/visit_near_end.hpp"
#include "supply/serving.hpp"

namespace sparewell::desk {

/// Pieces to have ready on the bench.
struct BenchPieces {
  ItemCode item;
  int quantity = 0;
  bool booked = false;           ///< otherwise to replace what is near its end
  std::vector<StockLevel> take;  ///< from the shelf; fewer than `quantity` where it has no more
  std::string stopped;           ///< why a check speaks against it; then nothing is taken
  std::string words;

  [[nodiscard]] int missing() const;
};

/// Pieces on the shelf are taken once: what one patient's bench gets, the next one's does not.
class Bench {
 public:
  /// `day` must outlive it.
  Bench(const Day& day, Date visit);

  /// What is booked for the patient until that day, and for each part near its end one like it, or
  /// the size that follows, unless it is booked anyway.
  [[nodiscard]] std::vector<BenchPieces> pieces_for(const PatientRef& patient,
                                                    const std::vector<NearEnd>& near_end);

 private:
  [[nodiscard]] std::vector<BenchPieces> booked(const PatientRef& patient);
  [[nodiscard]] BenchPieces replacement(const PatientRef& patient, Side side, const ItemCode& item,
                                        int quantity);
  [[nodiscard]] std::vector<StockLevel> take(const PatientRef& patient, const ItemCode& item,
                                             int quantity);
  [[nodiscard]] std::string pieces_words(int quantity, const ItemCode& code) const;

  const Day& day_;
  Date visit_;
  std::vector<StockLevel> shelf_;                             ///< what is left of it
  std::map<std::pair<ItemCode, PatientRef>, int> set_aside_;  ///< taken for their bookings
  std::vector<supply::Serving> servings_;
  std::map<std::size_t, ItemCode> next_items_;  ///< by unit
};

}  // namespace sparewell::desk
