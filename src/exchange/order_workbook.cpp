#include "exchange/order_workbook.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "exchange/order_sheet.hpp"

namespace sparewell::exchange {
namespace {

bool is_plain(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

}  // namespace

std::string order_file_name(const PurchaseOrder& order) {
  constexpr std::size_t longest = 80;
  std::string name;
  std::string start = order.number.empty() ? "not-ordered" : order.number;
  if (order.revision > 0) start = fmt::format("{} revision {}", start, order.revision);
  for (const char c : start + " " + order.supplier.name.text) {
    if (is_plain(c)) {
      name += c;
    } else if (!name.empty() && name.back() != '-') {
      name += '-';
    }
  }
  name.resize(std::min(name.size(), longest));
  while (name.ends_with('-')) name.pop_back();
  return name + ".xlsx";
}

void write_order_workbook(const PurchaseOrder& order, const std::filesystem::path& file) {
  WorkbookFile workbook{file, said("Order")};
  workbook.properties(order_title(order), order.clinic_name, order.ordered_on);
  OrderSheet{order, workbook}.write();
  workbook.save();
}

}  // namespace sparewell::exchange
