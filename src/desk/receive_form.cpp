#include "desk/receive_form.hpp"

#include <algorithm>
#include <charconv>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/label_item.hpp"
#include "exchange/barcode/read_label.hpp"

namespace sparewell::desk {
namespace {

std::string trimmed(std::string text) {
  const auto is_space = [](char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; };
  while (!text.empty() && is_space(text.back())) text.pop_back();
  text.erase(text.begin(), std::ranges::find_if_not(text, is_space));
  return text;
}

std::optional<int> whole_number(const std::string& typed) {
  const auto text = trimmed(typed);
  int value = 0;
  const auto* end = text.data() + text.size();
  const auto [stopped, error] = std::from_chars(text.data(), end, value);
  if (error != std::errc{} || stopped != end) return std::nullopt;
  return value;
}

std::vector<std::string> listed(const std::string& typed) {
  std::vector<std::string> made;
  for (std::size_t at = 0; at <= typed.size();) {
    const auto end = std::min(typed.find(',', at), typed.size());
    if (auto one = trimmed(typed.substr(at, end - at)); !one.empty()) made.push_back(one);
    at = end + 1;
  }
  return made;
}

/// Adds a further package of what the form has, which then has pieces already.
void add_pieces(ReceiveForm& form, const exchange::Label& label, bool further) {
  const auto serials = listed(form.serials);
  const bool known = std::ranges::find(serials, label.serial) != serials.end();
  if (!label.serial.empty() && !known) {
    form.serials += fmt::format("{}{}", serials.empty() ? "" : ",", label.serial);
  }
  if (further && known) return;  // the same package again
  const int more = label.quantity.value_or(1);
  const int before = further ? whole_number(form.quantity).value_or(0) : 0;
  form.quantity = std::to_string(before + more);
}

}  // namespace

Expected<Scanned> with_scan(ReceiveForm form, const std::string& scan,
                            const std::vector<Item>& catalogue, Date today) {
  const auto label = exchange::read_label(scan, today);
  if (!label) return tl::unexpected(label.error());
  bool further = !form.item.empty() && !form.quantity.empty();
  if (label->names_item()) {
    const auto item = item_of_label(*label, catalogue);
    if (!item) return tl::unexpected(item.error());
    if (!form.item.empty() && form.item != item->code.text) {
      return refuse(say("The label is that of {}; book {} first, or clear the item.",
                        item->code.text, form.item));
    }
    form.item = item->code.text;
  } else {
    further = false;  // a second barcode of the package that was scanned before
  }
  if (!label->lot.empty() && !form.lot.empty() && form.lot != label->lot) {
    return refuse(
        say("The label says lot {}; book lot {} first, or clear the lot.", label->lot, form.lot));
  }
  if (!label->lot.empty()) form.lot = label->lot;
  if (label->use_by) form.use_by = iso_text(*label->use_by);
  if (label->names_item()) {
    add_pieces(form, *label, further);
  } else if (!label->serial.empty() && form.serials.empty()) {
    form.serials = label->serial;
  }
  return Scanned{std::move(form), label->doubt};
}

Expected<ReceivingRequest> read_receive_form(const ReceiveForm& form) {
  ReceivingRequest made;
  made.order_ref = trimmed(form.order_ref);
  made.supplier = form.supplier;
  made.item = trimmed(form.item);
  if (made.item.empty()) return refuse(say("Item: scan the label, or write the item's code."));
  const auto quantity = whole_number(form.quantity);
  if (!quantity || *quantity < 1) return refuse(say("Pieces: write how many came, 1 or more."));
  made.quantity = quantity;
  if (!trimmed(form.damaged).empty()) {
    const auto damaged = whole_number(form.damaged);
    if (!damaged || *damaged < 0 || *damaged > *quantity) {
      return refuse(say("Damaged: write how many of the pieces are damaged, or leave it empty."));
    }
    made.damaged = *damaged;
  }
  made.lot = trimmed(form.lot);
  if (const auto day = trimmed(form.use_by); !day.empty()) {
    made.use_by = parse_iso_date(day);
    if (!made.use_by) return refuse(say("Use by: write the day as 2028-06-30, or leave it empty."));
  }
  made.damage = trimmed(form.damage);
  if (made.damaged > 0 && made.damage.empty()) {
    return refuse(
        say("What is damaged: say in a few words what is wrong with the damaged pieces."));
  }
  made.serials = listed(form.serials);
  made.damaged_serials = listed(form.damaged_serials);
  made.place = trimmed(form.place);
  made.damaged_settled = form.not_replaced;
  made.accepted = {form.accept_extra, form.without_use_by, form.accept_serial};
  return made;
}

ReceiveForm next_form(const ReceiveForm& form) {
  ReceiveForm made;
  made.order_ref = form.order_ref;
  made.supplier = form.supplier;
  made.place = form.place;
  return made;
}

}  // namespace sparewell::desk
