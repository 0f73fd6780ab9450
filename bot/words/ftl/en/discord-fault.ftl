# On Discord: what could not be done there, for coaches and for whoever runs the bot.

## Of a post, a reveal, or a word to somebody

no-discord-channel = “{ $channel }” is no channel of Discord.
channel-unseen = I cannot see the channel; give my role “View Channel” under { $channel } → Edit Channel → Permissions.
channel-mute = I may not write there; give my role “Send Messages” under { $channel } → Edit Channel → Permissions.
channel-gone = The channel is gone. Run /coach set-up in another one.
discord-away = Discord cannot be reached at the moment.
# $why is Discord's own answer, in English, in all of these.
discord-refuses = Discord refuses it: { $why }.
direct-unsent = A direct message could not be sent: { $why }.
part-missing = Part of it is missing so far: { $why }.
thread-missing = The post has no thread so far: { $why }.
buttons-stay = The closed post keeps its buttons so far: { $why }.

## Of the connection

no-token = No DISCORD_TOKEN is set.
token-file-unreadable = DISCORD_TOKEN_FILE names { $path }, which cannot be read: { $why }.
token-unfit = DISCORD_TOKEN holds no token; a bot's token is one line of letters, digits, dots, dashes and underscores, from the Bot page of your application (discord.com/developers).
token-file-unfit = The file that DISCORD_TOKEN_FILE names holds no token; a bot's token is one line of letters, digits, dots, dashes and underscores, from the Bot page of your application (discord.com/developers).
token-refused = Discord refuses the bot's token; copy it anew from the Bot page of your application (discord.com/developers) into DISCORD_TOKEN or the file that DISCORD_TOKEN_FILE names.
intent-refused = Discord refuses the message-content intent; switch it on under Bot → Privileged Gateway Intents of your application (discord.com/developers), or set message_content = false under [discord] in the settings.
not-an-api = SEALED_MOVE_DISCORD_API must be an address such as http://127.0.0.1:40000, not “{ $address }”.
discord-unreachable = Discord cannot be reached: { $why }.
commands-refused = Discord cannot be reached: the commands were refused: { $why }.
too-many-logins = { $minutes ->
    [one] The bot has logged in too often today; Discord lets it in again in { $minutes } minute.
   *[other] The bot has logged in too often today; Discord lets it in again in { $minutes } minutes.
}
gateway-closed = Discord cannot be reached: the gateway closed.
no-greeting = Discord does not greet the bot.
connection-lost = The line is lost.
on-discord = On Discord.
