#include "desk/typed_amounts.hpp"

namespace sparewell::desk {

Expected<Money> typed_amount(const std::string& text, const Currency& currency) {
  return parse_money(text, currency, text.find(',') == std::string::npos ? '.' : ',');
}

}  // namespace sparewell::desk
