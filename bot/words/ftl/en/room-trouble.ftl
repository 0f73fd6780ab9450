# What the room says where something could not be done, and where something was. Whoever runs the bot reads
# the last part, too.

## At the door

no-invitation = You are not in the room: open the link that your coach gave you.
removed-from-group = Your coach has removed you from this group. What you wrote before is still kept: ask your coach if you want a copy of it, or want it erased.
nameless-member = Choose a name first, so that the group knows who is speaking.
nameless-coach = Say who you are first: open the coach's page and give your name there.
not-by-coach-link = Only the coach may do this: open the coach's link, which the bot printed when it started.
# public_url is the name of a setting.
strange-host = This address is not one the room answers to. Use the link as the coach gave it, or set public_url.
strange-origin = This request did not come from the room's own pages, so nothing was done.

## Names and devices

name-empty = Write the name the group should see, such as your first name.
new-name-empty = Write the new name first.
name-tells-move = Everyone would see this name, and it could tell a move of the position that is open. Choose another one.
code-not-right = This code is not right, or it is too old: a code holds for ten minutes and for one device. Look at your other device again, or have it show a new one.
too-many-codes = Too many wrong codes were tried in this room. Wait ten minutes, then have your other device show a new one.
browser-is-taken = This browser belongs to { $name } already. If that is you too, ask your coach to make the two of you one.
language-unknown = “{ $asked }” is no language that the bot speaks. Choose one of those that are offered.

## What was sent

message-empty = There is nothing in the message yet.
message-too-large = The message is too large; 50,000 characters at most. Nothing was taken from it.
request-too-large = What was sent is too large; a reply may have 50,000 characters, a file 16 MB. Nothing was taken from it.
# $detail is technical and in English.
request-unreadable = The request could not be read: { $detail }.
request-broke-off = The request broke off before it was complete; try again.
too-fast = That is faster than the bot can read. Wait a few seconds and send it again; it was not taken.

## Checking files

file-empty = { $name } is empty. Paste or drop an EPD or PGN file, or FEN lines.
check-going-on = Another file is being checked; wait until it is done, then drop this one again.
check-broke-off = The check broke off. What was kept until then is on the shelf; the log says why.
other-version-gone = The other version of this position is no longer at hand. Check the file again, then choose.
time-unreadable = “{ $written }” is not a day and time; write it like 2026-12-01T18:00.

## The rest

nothing-here = There is nothing at this address.
fault-inside = Something went wrong inside the bot. What was kept before is not lost; please tell whoever runs it.
no-random-numbers = The machine that the bot runs on gives no random numbers, so no secret can be made. Please tell whoever runs it.
all-erased = Everything that was kept of you is erased.

## To whoever started the program

link-for-members = For members: { $link }
link-for-coach = For the coach: { $link }
# Part of a list.
room-not-open = the club room is closed in the settings
