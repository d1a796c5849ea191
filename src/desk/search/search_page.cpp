#include "desk/search/search_page.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/search/scanned.hpp"

namespace sparewell::desk {

SearchPage::SearchPage()
    : table_{{{said("What it is"), 16, Align::left, ""},
              {said("Found"), 40, Align::left, "", 1},
              {said("Belongs to"), 60, Align::left, "", 2}}} {}

void SearchPage::show(SearchIndexPtr index) {
  index_ = std::move(index);
  find();
}

void SearchPage::type(std::string_view typed) {
  typed_ = typed;
  find();
}

void SearchPage::find() {
  hits_ = {};
  words_.clear();
  doubtful_ = false;
  if (index_ && !typed_.empty()) {
    if (looks_scanned(typed_)) read_label();
    // What looks like a barcode may be a number of the clinic's own.
    if (hits_.hits.empty()) hits_ = index_->find(typed_);
    if (words_.empty() || (!doubtful_ && !hits_.hits.empty())) words_ = count_words();
  }
  std::vector<TableRow> rows;
  for (std::size_t i = 0; i < hits_.hits.size(); ++i) {
    const auto& hit = hits_.hits[i];
    rows.push_back({std::to_string(i),
                    {{hit_kind_words(hit.kind), std::nullopt},
                     {hit.title, std::nullopt},
                     {hit.context, std::nullopt}},
                    "",
                    0,
                    hit.exact});
  }
  table_.fill(std::move(rows));
}

void SearchPage::read_label() {
  auto scanned = where_label_leads(index_->day(), typed_);
  if (!scanned) {
    words_ = scanned.error().sentence;
    return;
  }
  words_ = scanned->doubt;
  doubtful_ = !words_.empty();
  hits_.hits = std::move(scanned->hits);
  for (auto& hit : hits_.hits) hit.exact = !doubtful_;
}

std::string SearchPage::count_words() const {
  const auto count = hits_.hits.size();
  if (hits_.more > 0) {
    return say("{} of {} shown: type more to find less.", count, count + hits_.more);
  }
  if (count > 0) return say_n("{} found", "{} found", count, count);
  return said(
      "Nothing answers to it. Type part of a name, a reference, item, lot, serial, order, claim or "
      "invoice number, or scan a label.");
}

std::optional<Destination> SearchPage::there(const std::string& id) const {
  for (std::size_t i = 0; i < hits_.hits.size(); ++i) {
    if (std::to_string(i) == id) return hits_.hits[i].there;
  }
  return std::nullopt;
}

std::optional<Destination> SearchPage::entered() const {
  if (doubtful_) return std::nullopt;
  if (hits_.hits.size() == 1) return hits_.hits.front().there;
  const auto exact = std::ranges::count_if(hits_.hits, &Hit::exact);
  // Exact ones come first.
  if (exact == 1) return hits_.hits.front().there;
  return std::nullopt;
}

}  // namespace sparewell::desk
