/// The invented clinic's shelf and its orders, day by day, under a simple rule of thumb: when the
/// position falls below what is used until the next delivery, order up to three weeks more.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "catalogue.hpp"
#include "clinic/order.hpp"
#include "clinic/stock.hpp"
#include "random.hpp"

namespace sparewell::sample {

inline constexpr const char* main_place = "main store";
inline constexpr const char* branch_place = "Thistledown branch";
inline constexpr const char* quarantine_place = "quarantine shelf";

class Shop {
 public:
  Shop(const Catalogue& catalogue, std::uint64_t seed, Date from, Date until);

  /// Puts the first stock on the shelf, from orders before the first day.
  void open_with(std::size_t item, int quantity);
  /// Takes in what the suppliers deliver on `today`.
  void receive(Date today);
  /// Takes one piece, the one that expires first; nothing when there is none to hand out.
  std::optional<Lot> take(std::size_t item, Date today);
  /// Patients wait for `more` pieces of the item (negative: fewer).
  void change_waiting(std::size_t item, int more) { stock_[item].waiting += more; }
  /// `more` pieces are worn all the time, on average (negative: fewer).
  void change_worn(std::size_t item, double more) { stock_[item].worn += more; }
  /// Sends the day's orders to the suppliers whose order day it is.
  void place_orders(Date today);
  void quarantine(std::size_t item, const std::string& lot);

  [[nodiscard]] const std::vector<OrderLine>& orders() const { return orders_; }
  /// What lies where at the end, in the order of the catalogue.
  [[nodiscard]] std::vector<StockLevel> shelf() const;

 private:
  struct Stock {
    std::vector<StockLevel> levels;
    int waiting = 0;
    int on_order = 0;
    double worn = 0;
    double used_a_day = 0;  ///< by one piece that is worn all the time
  };
  struct Delivery {
    std::size_t line;
    std::size_t item;
    int quantity;
  };

  [[nodiscard]] int wanted(std::size_t item, double cycle_days, Date today) const;
  void order(std::size_t item, int quantity, const std::string& reference, Date today);
  void plan_delivery(std::size_t line, std::size_t item, Date today);
  void put_on_shelf(std::size_t item, int quantity, Date today);
  [[nodiscard]] bool orders_today(std::size_t supplier, Date today) const;
  [[nodiscard]] std::string take_reference(Date today);

  const Catalogue& catalogue_;
  Random random_;
  Date from_;
  Date until_;
  std::vector<Stock> stock_;
  std::vector<OrderLine> orders_;
  std::multimap<Date, Delivery> deliveries_;
  int orders_made_ = 0;
  int lots_made_ = 0;
};

}  // namespace sparewell::sample
