#include "care/attachment.hpp"

#include <algorithm>

namespace sparewell::care {
namespace {

bool carries_thread(const Item& item) {
  return item.kind == Kind::pin || item.kind == Kind::lock ||
         (item.kind == Kind::liner && item.attachment == Attachment::locking);
}

/// "M10", "m 10" and "M-10" are one thread.
std::string plain_thread(const std::string& thread) {
  std::string made;
  for (const char c : thread) {
    if (c == ' ' || c == '-') continue;
    made += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  }
  return made;
}

void compare_threads(std::vector<AttachmentFinding>& found, const Item& item, const Worn& worn) {
  if (!carries_thread(item)) return;
  std::vector<const Item*> seen;
  for (const Item* other : worn.items) {
    // A part of its own kind is what it replaces or alternates with.
    if (other->kind == item.kind || !carries_thread(*other)) continue;
    if (std::ranges::find(seen, other) != seen.end()) continue;
    seen.push_back(other);
    const auto ours = plain_thread(item.thread);
    const auto theirs = plain_thread(other->thread);
    if (ours.empty() || theirs.empty()) {
      found.push_back({Mismatch::thread_not_stated, other});
    } else if (ours != theirs) {
      found.push_back({Mismatch::thread_differs, other});
    }
  }
}

bool holds_by(Suspension suspension, Attachment attachment) {
  switch (suspension) {
    case Suspension::pin:
    case Suspension::lanyard:
      return attachment == Attachment::locking;
    case Suspension::sleeve:
      return attachment == Attachment::cushion;
    case Suspension::suction:
    case Suspension::vacuum:
      return attachment == Attachment::cushion || attachment == Attachment::seal;
    default:
      return attachment != Attachment::locking;
  }
}

bool has_work(Kind kind, Suspension suspension) {
  switch (kind) {
    case Kind::pin:
      return suspension == Suspension::pin;
    case Kind::lock:
      return suspension == Suspension::pin || suspension == Suspension::lanyard;
    case Kind::sleeve:
      return suspension == Suspension::sleeve || suspension == Suspension::suction ||
             suspension == Suspension::vacuum;
    case Kind::valve:
      return suspension == Suspension::suction || suspension == Suspension::vacuum;
    case Kind::pump:
      return suspension == Suspension::vacuum;
    default:
      return true;
  }
}

}  // namespace

std::vector<AttachmentFinding> check_attachment(const Item& item, const Worn& worn) {
  std::vector<AttachmentFinding> found;
  if (worn.prosthesis) {
    const auto suspension = worn.prosthesis->suspension;
    if (item.kind == Kind::liner && !holds_by(suspension, item.attachment)) {
      found.push_back({Mismatch::liner_not_for_this, nullptr});
    } else if (!has_work(item.kind, suspension)) {
      found.push_back({Mismatch::not_in_suspension, nullptr});
    }
  }
  compare_threads(found, item, worn);
  return found;
}

}  // namespace sparewell::care
