/// A delivery that is taken out of its box with a scanner in hand: each scan says what it was,
/// where it goes and how many are in; all of it is booked at the end.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/receiving.hpp"
#include "desk/table.hpp"
#include "exchange/barcode/label.hpp"
#include "supply/serving.hpp"

namespace sparewell::desk {

/// What the program answers to a scan. A refused one is not in the tray.
struct ScanAnswer {
  enum class Sort { taken, look, refused };
  Sort sort = Sort::taken;
  std::string sentence;
};

class ScanTray {
 public:
  /// `order_ref` and `supplier` are "" to find the order of each item by itself. With the place to
  /// which pieces go that are for nobody.
  ScanTray(DayPtr day, std::string order_ref, std::string supplier, std::string place);

  /// One barcode: a package, or the second barcode of the package before it. Refuses what cannot be
  /// read, what is of no open order, beyond what was ordered, expired, or a serial number that was
  /// scanned or is recorded already.
  [[nodiscard]] ScanAnswer scan(const std::string& text);
  /// Takes the last scan out again.
  [[nodiscard]] ScanAnswer undo();
  /// Takes all out that is not booked; to be taken back like a scan.
  [[nodiscard]] ScanAnswer discard_all();
  [[nodiscard]] bool can_undo() const { return !scans_.empty(); }
  [[nodiscard]] bool empty() const { return packages_.empty(); }

  [[nodiscard]] static std::vector<Column> columns();
  /// One row a lot of an item, in the order of the first scan of it.
  [[nodiscard]] std::vector<TableRow> rows() const;
  /// What will be booked, before it is.
  [[nodiscard]] std::string summary() const;

  /// What it is about, so that what was left can be found again.
  [[nodiscard]] std::string key() const;
  /// The barcodes of what is not booked yet, so that the tray can be filled again later.
  [[nodiscard]] std::vector<std::string> texts() const;
  /// Scans them again, which were left unbooked at `when`; what is not taken any more is said.
  [[nodiscard]] ScanAnswer bring_back(const std::vector<std::string>& texts,
                                      const std::string& when);

  /// One for each row, in its order.
  [[nodiscard]] std::vector<ReceivingRequest> requests() const;
  /// The rows at these positions were booked: they leave the tray, and cannot be undone any more.
  void booked(const std::vector<std::size_t>& rows);

 private:
  struct Package {
    Item item;
    std::string lot;
    std::optional<Date> use_by;
    std::string serial;
    int pieces = 1;
    std::vector<std::string> goes_to;  ///< in words, one for each piece
    std::vector<std::string> texts;    ///< its barcodes
  };
  /// Where the pieces of one row lie among the packages.
  struct Lot {
    std::vector<const Package*> packages;
    [[nodiscard]] int pieces() const;
  };

  [[nodiscard]] ScanAnswer add(const std::string& text, const exchange::Label& label,
                               const Item& item);
  [[nodiscard]] ScanAnswer add_second(const std::string& text, const exchange::Label& label);
  [[nodiscard]] std::string why_refused(const Package& package, const Package* instead_of) const;
  [[nodiscard]] std::string words(const Package& package) const;
  [[nodiscard]] std::vector<Lot> lots() const;
  [[nodiscard]] std::vector<const OrderLine*> lines_of(const ItemCode& item) const;
  [[nodiscard]] int scanned(const ItemCode& item) const;
  [[nodiscard]] std::string goes_to(const ItemCode& item, int position) const;

  DayPtr day_;
  std::string order_ref_;
  std::string supplier_;
  std::string place_;
  std::vector<supply::Serving> servings_;
  std::vector<Package> packages_;
  std::vector<Package> in_already_;          ///< booked in this session, and not in the day yet
  std::vector<std::vector<Package>> scans_;  ///< the packages as they were before each scan
};

}  // namespace sparewell::desk
