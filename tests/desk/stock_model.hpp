/// A second, plain account of what stock work does: pieces by lot and place, and the open loans and
/// returns. It shares no code with the program but the names of lots and places.
#pragma once

#include <map>
#include <random>
#include <string>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::test {

inline const Date model_day = make_date(2026, 11, 25);
inline constexpr int model_items = 120;
inline constexpr int lots_of_item = 4;

enum class Doing {
  receipt,
  issue_first_expiring,
  issue_of_lot,
  transfer,
  arrive,
  count,
  quarantine,
  release,
  write_off,
  give_back,
  credit,
  lend,
  loan_end,
  count_  ///< how many there are
};

/// One operation, valid or not; the fields mean what the operation makes of them.
struct Operation {
  Doing doing = Doing::receipt;
  int lot = 0;
  bool names_lot = true;
  bool names_use_by = true;
  std::string from;
  std::string to;
  int quantity = 0;
  bool flag = false;   ///< at once; rest lost; last credit; received against an order
  bool flag2 = false;  ///< gives a reason, where one may be missing
  int number = 0;      ///< of a loan or return; which reason to write off for
  int more[2] = {0, 0};
};

struct ModelLoan {
  int lot = 0;
  int out = 0;
};
struct ModelReturn {
  int lot = 0;
  int quantity = 0;
  int supplier = 0;
  long due = 0;  ///< cents
  bool open = true;
};
struct Step {
  int lot = 0;
  std::string place;
  int pieces = 0;
};

class StockModel {
 public:
  /// By lot and place; never zero.
  std::map<std::pair<int, std::string>, int> shelf;
  std::vector<ModelLoan> loans;      ///< loan 1 first
  std::vector<ModelReturn> returns;  ///< return 1 first
  std::vector<Step> steps;           ///< of the operations since clear()
  bool wrote_more = false;           ///< one of these also wrote another record

  /// What should happen: true when it is carried out, false when it is refused.
  bool apply(const Operation& operation);
  /// Takes steps back: what goes in first, then what goes out. False when a level is too low.
  bool take_back(const std::vector<Step>& taken);
  void clear() {
    steps.clear();
    wrote_more = false;
  }

  [[nodiscard]] int at(int lot, const std::string& place) const;

 private:
  void move(int lot, const std::string& place, int pieces);
  /// -1 when the operation's pieces are not there or not one lot.
  [[nodiscard]] int found(const Operation& op, const std::string& place, int quantity) const;
  bool issue_first_expiring(const Operation& op);
  bool arrive(const Operation& op);
  bool give_back(const Operation& op);
  bool credit(const Operation& op);
  bool end_loan(const Operation& op);
};

[[nodiscard]] Lot model_lot(int lot);
[[nodiscard]] long model_cost(int item);  ///< cents
[[nodiscard]] Operation random_operation(std::mt19937& random, const StockModel& model);

}  // namespace sparewell::test
